package org.chordlog.stats.control;

import java.util.Set;

/** Names a signal: the chart, and the last reading of the point that carries it. */
public record SignalKey(ChartKind chart, long lastReadingId) {
  private static final Set<ChartKind> SPREAD =
      Set.of(ChartKind.MOVING_RANGE, ChartKind.RANGE, ChartKind.STANDARD_DEVIATION);

  /** Whether the chart shows the spread; all others show the level. */
  boolean ofSpread() {
    return SPREAD.contains(chart);
  }
}
