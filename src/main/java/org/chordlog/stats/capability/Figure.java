package org.chordlog.stats.capability;

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
  /** What it is; throws for a name that {@link FigureKind} does not list. */
  public FigureKind kind() {
    return FigureKind.named(name).orElseThrow();
  }
}
