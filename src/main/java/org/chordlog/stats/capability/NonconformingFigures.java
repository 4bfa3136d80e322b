package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.Normal;
import org.jspecify.annotations.Nullable;

/** Parts per million beyond each specification limit, as seen and as a normal one would give. */
final class NonconformingFigures {
  private static final double MILLION = 1e6;
  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final List<Figure> figures = new ArrayList<>();

  NonconformingFigures(StatisticsPlan plan, Evidence evidence) {
    this.plan = plan;
    this.evidence = evidence;
  }

  List<Figure> figures() {
    if (!plan.limits().any() || evidence.values().n() < 2) {
      return figures;
    }
    observed();
    expected("Within", evidence.within());
    expected("Overall", evidence.overall());
    return figures;
  }

  private void observed() {
    if (plan.limits().lower() != null) {
      observed("observedBelowPpm", evidence.belowLower());
    }
    if (plan.limits().upper() != null) {
      observed("observedAbovePpm", evidence.aboveUpper());
    }
  }

  private void observed(String name, long count) {
    double n = evidence.values().n();
    double error = (1 - Interval.CONFIDENCE) / 2;
    double lower = count == 0 ? 0 : beta((double) count, n - count + 1, error);
    double upper = count == n ? 1 : beta(count + 1.0, n - count, 1 - error);
    figures.add(
        Figures.ranged(
            name,
            MILLION * count / n,
            MILLION * lower,
            MILLION * upper,
            "ppm",
            count + " of " + (long) n + " readings; interval after Clopper and Pearson (1934)",
            "ISO 22514-2"));
  }

  private static double beta(double a, double b, double p) {
    return BetaDistribution.of(a, b).inverseCumulativeProbability(p);
  }

  private void expected(String which, @Nullable Estimate estimate) {
    if (estimate == null || !(estimate.sigma() > 0)) {
      return;
    }
    double total = 0;
    Double lower = plan.limits().lower();
    if (lower != null) {
      total += tail("expectedBelowPpm" + which, (lower - estimate.mean()) / estimate.sigma());
    }
    Double upper = plan.limits().upper();
    if (upper != null) {
      total += tail("expectedAbovePpm" + which, (estimate.mean() - upper) / estimate.sigma());
    }
    add("expectedPpm" + which, total);
  }

  private double tail(String name, double z) {
    double part = Normal.below(z);
    add(name, part);
    return part;
  }

  private void add(String name, double part) {
    figures.add(
        Figures.plain(
            name,
            MILLION * part,
            "ppm",
            "normal distribution of that mean and sigma",
            "ISO 22514-2"));
  }
}
