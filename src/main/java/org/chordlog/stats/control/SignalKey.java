package org.chordlog.stats.control;

/** Names a signal: the chart, and the last reading of the point that carries it. */
public record SignalKey(ChartKind chart, long lastReadingId) {
  /** Whether the chart shows the spread; all others show the level. */
  boolean ofSpread() {
    return chart.ofSpread();
  }
}
