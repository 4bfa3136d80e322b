package org.chordlog.stats;

import java.util.List;

/** One point of a chart: its running number from 1, value, what it stands for, and its signals. */
public record ChartPoint(
    long number,
    double value,
    int size,
    long firstReadingId,
    long lastReadingId,
    int piece,
    String position,
    long atMicros,
    boolean excluded,
    String reason,
    List<Signal> signals) {
  public ChartPoint {
    signals = List.copyOf(signals);
  }
}
