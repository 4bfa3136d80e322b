package org.chordlog.stats;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How often the pieces of a job were rolled, and what each pass did. {@code meanPasses} is that of
 * a piece, 0 without pieces; {@code rolledAgain} counts the pieces that took more than one.
 */
public record PassSummary(int pieces, double meanPasses, int rolledAgain, List<Pass> passes) {
  public static final PassSummary NONE = new PassSummary(0, 0, 0, List.of());

  public PassSummary {
    passes = List.copyOf(passes);
  }

  /**
   * A pass after the first: over the {@code places} that were measured before and after it, the
   * mean change of radius in mm (below 0: tighter) and its standard deviation, null of one place.
   */
  public record Pass(
      int pass, long places, double meanChangeMm, @Nullable Double standardDeviationMm) {}

  /** Part of the pieces that took more than one pass, 0 to 1. */
  public double shareRolledAgain() {
    return pieces == 0 ? 0 : rolledAgain / (double) pieces;
  }
}
