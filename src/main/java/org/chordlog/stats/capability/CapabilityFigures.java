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
      indices("Cp", "CpkLower", "CpkUpper", "Cpk", within, Figures.withinMethod(plan));
    }
    Estimate overall = evidence.overall();
    if (overall.sigma() > 0) {
      indices("Pp", "PpkLower", "PpkUpper", "Ppk", overall, "overall standard deviation");
      exact(overall);
      bootstrap();
      targeted(overall);
    }
    return figures;
  }

  private void indices(
      String both, String low, String high, String least, Estimate sigma, String method) {
    Capability capability = capability(sigma);
    add(both, capability.potential(), "(USL - LSL)/6σ, " + method + "; interval by chi-square");
    add(low, capability.lowerSide(), "(mean - LSL)/3σ, " + method + Capability.BISSELL);
    add(high, capability.upperSide(), "(USL - mean)/3σ, " + method + Capability.BISSELL);
    add(least, capability.nearer(), "the smaller of " + low + " and " + high + Capability.BISSELL);
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

  private void bootstrap() {
    double[] values = evidence.shape().values();
    if (values.length < 10 || values.length > Bootstrap.MOST) {
      return;
    }
    add(
        "PpkBootstrap",
        Bootstrap.interval(values, this::nearer),
        "Ppk; percentile bootstrap of " + Bootstrap.RESAMPLES + " resamples, seed fixed");
  }

  private double nearer(Moments moments) {
    Interval nearer = capability(Estimate.overall(moments)).nearer();
    return nearer == null ? Double.NaN : nearer.value();
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
              name, index.value(), index.lower(), index.upper(), "", method, Capability.SOURCE));
    }
  }
}
