package org.chordlog.stats.control;

import java.util.EnumSet;
import java.util.Set;

/** The control charts, by their names in ISO 7870. */
public enum ChartKind {
  INDIVIDUALS(Points.SINGLE, Tests.ALL) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return new LevelPlotter();
    }
  },
  MOVING_RANGE(Points.SINGLE, Tests.LIMIT) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return new MovingRangePlotter();
    }
  },
  MEAN(Points.SUBGROUP, Tests.ALL) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return new LevelPlotter();
    }
  },
  RANGE(Points.SUBGROUP, Tests.SKEWED) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return SpreadPlotter.range();
    }
  },
  STANDARD_DEVIATION(Points.SUBGROUP, Tests.SKEWED) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return SpreadPlotter.deviation();
    }
  },
  EWMA(Points.EITHER, Tests.LIMIT) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return new EwmaPlotter(plan);
    }
  },
  CUSUM(Points.EITHER, Tests.LIMIT) {
    @Override
    Plotter plotter(StatisticsPlan plan) {
      return new CusumPlotter(plan);
    }
  };

  /** What the chart's points are. */
  private enum Points {
    SINGLE,
    SUBGROUP,
    EITHER
  }

  /** Tests 5 to 8 suppose symmetry (Nelson 1984); dependent points allow only the limit. */
  private enum Tests {
    ALL,
    SKEWED,
    LIMIT
  }

  private final Points points;
  private final Tests tests;

  ChartKind(Points points, Tests tests) {
    this.points = points;
    this.tests = tests;
  }

  /** The run tests that make sense on it. */
  public Set<RunTest> tests() {
    return switch (tests) {
      case ALL -> EnumSet.allOf(RunTest.class);
      case SKEWED -> EnumSet.range(RunTest.BEYOND_LIMIT, RunTest.ALTERNATING);
      case LIMIT -> EnumSet.of(RunTest.BEYOND_LIMIT);
    };
  }

  /** Whether specification limits of single values can be drawn on it. */
  boolean onSpecifiedScale() {
    return this == INDIVIDUALS || this == MEAN || this == EWMA;
  }

  abstract Plotter plotter(StatisticsPlan plan);

  /** Charts drawn from single values, and those drawn from subgroups where there are any. */
  static Set<ChartKind> of(boolean subgroups, boolean subgrouped) {
    Points own = subgroups ? Points.SUBGROUP : Points.SINGLE;
    EnumSet<ChartKind> kinds = EnumSet.allOf(ChartKind.class);
    kinds.removeIf(
        kind -> kind.points == Points.EITHER ? subgroups != subgrouped : kind.points != own);
    return kinds;
  }

  /** Whether it shows the spread; all others show the level. */
  public boolean ofSpread() {
    return this == MOVING_RANGE || this == RANGE || this == STANDARD_DEVIATION;
  }
}
