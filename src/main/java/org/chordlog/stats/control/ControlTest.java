package org.chordlog.stats.control;

import org.apache.commons.statistics.distribution.FDistribution;
import org.chordlog.stats.math.StudentLimits;
import org.jspecify.annotations.Nullable;

/**
 * Compares the newest points of a phase with those before, whose own uncertainty counts: the level
 * by Student's t (Hawkins, Qiu and Kang 2003, Journal of Quality Technology 35, 355-366, limited to
 * a few lengths of the newest stretch; for one point it is the second-stage limit of Hillier 1969,
 * ibid. 1, 17-26), the spread by F. With a standard given, that is what they are compared with.
 */
final class ControlTest {
  /** Newest points that are taken together. */
  static final int[] WINDOWS = {1, 4, 8, 12, 16, 20};

  static final int LONGEST = 20;

  /** Index of the window that the spread is taken from. */
  static final int SPREAD_WINDOW = 3;

  /** Fewest points before the newest ones. */
  static final int LEAST = 8;

  /*
   * Errors of one test at one point. They were set by simulation so that a steady process is called
   * not in control in less than 5 % of looks, all tests and the time that a call is held together.
   */
  static final double FAR_ERROR = 3e-4;
  private static final double SINGLE_ERROR = 3e-3;
  private static final double SUBGROUP_ERROR = 4e-3;
  private static final double SPREAD_ERROR = 8e-4;

  private static final StudentLimits FAR = new StudentLimits(FAR_ERROR);
  private static final StudentLimits SINGLE = new StudentLimits(SINGLE_ERROR);
  private static final StudentLimits SUBGROUP = new StudentLimits(SUBGROUP_ERROR);

  private final StudentLimits level;
  private final ChartSettings.@Nullable Standard standard;

  ControlTest(StatisticsPlan plan) {
    level = plan.subgrouped() ? SUBGROUP : SINGLE;
    standard = plan.charts().standard();
  }

  /** A difference of levels in its own standard deviations, and how well those are known. */
  record Difference(double t, double freedom) {
    double chance() {
      return StudentLimits.chance(t, freedom);
    }
  }

  /** Enough to compare with. */
  boolean possible(Sums before) {
    return standard != null || before.points() >= LEAST;
  }

  boolean far(Difference difference) {
    return Math.abs(difference.t()) > FAR.of(difference.freedom());
  }

  boolean moved(Difference difference) {
    return Math.abs(difference.t()) > level.of(difference.freedom());
  }

  /** Of the newest points from those before; 0 where nothing varies. {@code floor}: least sigma. */
  Difference difference(Sums before, Sums newest, double floor) {
    if (standard != null) {
      double distance = newest.mean() * Math.sqrt(newest.weight()) / standard.standardDeviation();
      return new Difference(distance, Double.MAX_VALUE);
    }
    double freedom = before.freedomWithin() + newest.freedomWithin();
    double squares = before.squaresWithin() + newest.squaresWithin();
    if (freedom < LEAST) {
      freedom = before.points() + newest.points() - 2.0;
      squares = before.squaresBetween() + newest.squaresBetween();
    }
    double sigma = Math.max(floor, Math.sqrt(squares / freedom));
    double error = sigma * Math.sqrt(1 / before.weight() + 1 / newest.weight());
    return new Difference(error > 0 ? (newest.mean() - before.mean()) / error : 0, freedom);
  }

  /** Chance of the newest points' spread if that of those before goes on; 1 unless small. */
  double widerChance(Sums before, Sums newest) {
    boolean within = newest.freedomWithin() >= LEAST;
    double freedom = within ? newest.freedomWithin() : newest.points() - 1.0;
    double variance = (within ? newest.squaresWithin() : newest.squaresBetween()) / freedom;
    double ratio = variance / varianceBefore(before, within);
    boolean clear = ratio > 1 + 2 * Math.sqrt(2 / freedom) && Double.isFinite(ratio);
    return clear
        ? FDistribution.of(freedom, freedomBefore(before, within)).survivalProbability(ratio)
        : 1;
  }

  boolean wider(double chance) {
    return chance < SPREAD_ERROR;
  }

  private double varianceBefore(Sums before, boolean within) {
    if (standard != null) {
      return standard.standardDeviation() * standard.standardDeviation();
    }
    double squares = within ? before.squaresWithin() : before.squaresBetween();
    return squares / freedomBefore(before, within);
  }

  private double freedomBefore(Sums before, boolean within) {
    if (standard != null) {
      return Integer.MAX_VALUE;
    }
    return within ? before.freedomWithin() : before.points() - 1.0;
  }
}
