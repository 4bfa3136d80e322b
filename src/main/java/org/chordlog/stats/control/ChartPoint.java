package org.chordlog.stats.control;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One point of a chart: its running number from 1, value, what it stands for, and its signals.
 * {@code lowerValue} is the lower sum of a CUSUM, drawn below zero; null on every other chart. An
 * excluded point carries the reason; of a point that has lost only some readings it tells how many.
 */
public record ChartPoint(
    long number,
    double value,
    @Nullable Double lowerValue,
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

  /** Whether it counts and broke a run test. */
  public boolean signalling() {
    return !excluded && !signals.isEmpty();
  }
}
