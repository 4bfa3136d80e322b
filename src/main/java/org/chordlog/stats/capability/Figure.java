package org.chordlog.stats.capability;

import org.chordlog.stats.math.Interval;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a summary. {@code value} is null where the data can't give it; {@code method} then
 * says why. The interval, where there is one, holds at {@code confidence}.
 */
public record Figure(
    String name,
    @Nullable Double value,
    @Nullable Double lower,
    @Nullable Double upper,
    @Nullable Double confidence,
    String unit,
    String method,
    String source) {
  /** The same figure computed otherwise; {@code range} null: without an interval. */
  Figure computed(
      @Nullable Double newValue, @Nullable Bounds range, String newMethod, String newSource) {
    return new Figure(
        name,
        newValue,
        range == null ? null : range.lower(),
        range == null ? null : range.upper(),
        range == null ? null : Interval.CONFIDENCE,
        unit,
        newMethod,
        newSource);
  }

  /** Either end is null where it is open. */
  record Bounds(@Nullable Double lower, @Nullable Double upper) {}

  /** What it is; throws for a name that {@link FigureKind} does not list. */
  public FigureKind kind() {
    return FigureKind.named(name).orElseThrow();
  }
}
