package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Bootstrap;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.Moments;
import org.jspecify.annotations.Nullable;

/** Cp, Cpk and their kin from sigma within, Pp, Ppk, Cpm from sigma overall. */
final class CapabilityFigures {
  /** With fewer values that are not normal a bootstrap interval promises too much. */
  private static final int LEAST_NOT_NORMAL = 100;

  private static final double LEAST_VARIANCE = 1e-6;
  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final List<Figure> figures = new ArrayList<>();

  CapabilityFigures(StatisticsPlan plan, Evidence evidence) {
    this.plan = plan;
    this.evidence = evidence;
  }

  List<Figure> figures() {
    if (!plan.limits().any() || evidence.values().n() < 2) {
      return figures;
    }
    Estimate within = evidence.within();
    if (within != null && within.sigma() > 0) {
      String method = Figures.withinMethod(plan);
      potential("Cp", within, method + Figures.CHI_SQUARE_WITHIN);
      nearer("CpkLower", "CpkUpper", "Cpk", within, method);
    }
    Estimate overall = evidence.overall();
    if (overall.sigma() > 0) {
      String method = "overall standard deviation";
      potential("Pp", overall, method + Figures.CHI_SQUARE);
      nearer("PpkLower", "PpkUpper", "Ppk", overall, method);
      exact(overall);
      bootstrap();
      targeted(overall);
    }
    return figures;
  }

  private void potential(String name, Estimate sigma, String method) {
    add(name, capability(sigma).potential(), "(USL - LSL)/6σ, " + method);
  }

  private void nearer(String low, String high, String least, Estimate sigma, String method) {
    Capability capability = capability(sigma);
    add(low, capability.lowerSide(), "(mean - LSL)/3σ, " + method + Capability.BISSELL);
    add(high, capability.upperSide(), "(USL - mean)/3σ, " + method + Capability.BISSELL);
    add(least, capability.nearer(), "the smaller of its two sides" + Capability.BISSELL);
  }

  /** For the nearer limit; with two limits its lower end errs to the safe side. */
  private void exact(Estimate overall) {
    Interval nearer = capability(overall).nearer();
    long n = evidence.values().n();
    if (nearer != null && ExactInterval.possible(nearer.value(), n)) {
      add(
          "PpkExact",
          ExactInterval.of(nearer.value(), n),
          "Ppk; exact interval of the nearer side by the noncentral t distribution");
    }
  }

  /** Only where it was found to hold what it promises. */
  private void bootstrap() {
    double[] values = evidence.shape().values();
    int least = evidence.shape().refused() ? LEAST_NOT_NORMAL : Bootstrap.LEAST;
    if (values.length >= least && values.length <= Bootstrap.MOST) {
      add(
          "PpkBootstrap",
          Bootstrap.interval(values, this::nearer, this::error),
          "Ppk; bootstrap-t of "
              + Bootstrap.RESAMPLES
              + " resamples, seed fixed; holds 92 to 96 % instead of 95");
    }
  }

  private double nearer(Moments moments) {
    Interval nearer = capability(Estimate.overall(moments)).nearer();
    return nearer == null ? Double.NaN : nearer.value();
  }

  /**
   * Standard error of the nearer index for any distribution with four moments: the delta method
   * with skewness and kurtosis.
   */
  private double error(Moments moments) {
    Capability capability = capability(Estimate.overall(moments));
    Interval upper = capability.upperSide();
    double index = nearer(moments);
    double side = upper != null && upper.value() == index ? 1 : -1;
    double kurtosis = moments.kurtosis() + 3;
    double variance =
        1 / 9.0 + index * index * (kurtosis - 1) / 4 + side * index * moments.skewness() / 3;
    return Math.sqrt(Math.max(variance, LEAST_VARIANCE) / moments.n());
  }

  private void targeted(Estimate overall) {
    Double target = plan.limits().target();
    Interval potential = capability(overall).potential();
    if (target == null || potential == null) {
      return;
    }
    double xi = (overall.mean() - target) / overall.sigma();
    double freedom = evidence.values().n() * (1 + xi * xi) * (1 + xi * xi) / (1 + 2 * xi * xi);
    add(
        "Cpm",
        Capability.chiSquare(potential.value() / Math.sqrt(1 + xi * xi), freedom),
        "(USL - LSL)/6√(s² + (mean - target)²); interval by chi-square after Boyles (1991)");
  }

  private Capability capability(Estimate sigma) {
    return new Capability(plan.limits(), sigma, evidence.values().n());
  }

  private void add(String name, @Nullable Interval index, String method) {
    if (index != null) {
      figures.add(
          Figures.ranged(
              name,
              index.value(),
              index.lower(),
              index.upper(),
              "",
              evidence.gaugeTooCoarse() ? method + "; the gauge is too coarse for it" : method,
              Capability.SOURCE));
    }
  }
}
