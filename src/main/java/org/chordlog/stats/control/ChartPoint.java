package org.chordlog.stats.control;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One point of a chart: its running number from 1, value, the readings it is made of, its signals.
 * {@code lowerValue} is the lower sum of a CUSUM, drawn below zero; null on every other chart.
 */
public record ChartPoint(
    long number,
    double value,
    @Nullable Double lowerValue,
    int size,
    PointReadings readings,
    PointExclusion exclusion,
    List<Signal> signals) {
  public ChartPoint {
    signals = List.copyOf(signals);
  }

  /** Whether it counts and broke a run test. */
  public boolean signalling() {
    return !excluded() && !signals.isEmpty();
  }

  /** The same point at another value, with other signals. */
  public ChartPoint with(double newValue, @Nullable Double newLower, List<Signal> newSignals) {
    return new ChartPoint(number, newValue, newLower, size, readings, exclusion, newSignals);
  }

  public long firstReadingId() {
    return readings.firstReadingId();
  }

  public long lastReadingId() {
    return readings.lastReadingId();
  }

  public int piece() {
    return readings.piece();
  }

  public String position() {
    return readings.position();
  }

  public long atMicros() {
    return readings.atMicros();
  }

  public boolean excluded() {
    return exclusion.excluded();
  }

  public String reason() {
    return exclusion.reason();
  }
}
