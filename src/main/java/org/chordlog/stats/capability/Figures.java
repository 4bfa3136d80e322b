package org.chordlog.stats.capability;

import org.chordlog.stats.control.Spread;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Interval;
import org.jspecify.annotations.Nullable;

/** Ways to make a {@link Figure}. */
final class Figures {
  static final String CHI_SQUARE = "; interval by chi-square";

  /** Of the standard deviation within, and of what is worked out of it. */
  static final String CHI_SQUARE_WITHIN = CHI_SQUARE + " with Patnaik's degrees of freedom";

  private Figures() {}

  static Figure plain(String name, double value, String unit, String method, String source) {
    return new Figure(name, known(value), null, null, null, unit, method, source);
  }

  static Figure ranged(
      String name,
      double value,
      double lower,
      double upper,
      String unit,
      String method,
      String source) {
    boolean any = known(lower) != null || known(upper) != null;
    return new Figure(
        name,
        known(value),
        known(lower),
        known(upper),
        any ? Interval.CONFIDENCE : null,
        unit,
        method,
        source);
  }

  static Figure absent(String name, String unit, String why) {
    return new Figure(name, null, null, null, null, unit, why, "");
  }

  /** How the standard deviation within is found. */
  static String withinMethod(StatisticsPlan plan) {
    if (!plan.subgrouped()) {
      return "mean moving range of two / d2";
    }
    return (plan.charts().spread() == Spread.RANGE
            ? "subgroup ranges / d2"
            : "subgroup standard deviations / c4")
        + ", weighted after Burr";
  }

  private static @Nullable Double known(double value) {
    return Double.isFinite(value) ? value : null;
  }
}
