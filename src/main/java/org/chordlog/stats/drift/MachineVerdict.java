package org.chordlog.stats.drift;

import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * What a machine's deviations say since its rollers were last set: steady, creeping or jumped.
 * Deviations are relative, in curvature; {@code slope} is per 1,000 pieces with its interval at 95
 * %; {@code reachesTolerance} is the count of pieces until the trend line gets there.
 */
public record MachineVerdict(
    State state,
    String text,
    long pieces,
    @Nullable Long sincePiece,
    @Nullable Long sinceMicros,
    @Nullable Double level,
    @Nullable Double ewma,
    @Nullable TheilSen slope,
    @Nullable Double trendPValue,
    @Nullable Double changePValue,
    @Nullable Double step,
    @Nullable Double reachesTolerance) {
  /** Fewest pieces that a verdict is given on. */
  public static final int LEAST = 10;

  public enum State {
    TOO_FEW,
    STEADY,
    CREEPING,
    JUMPED
  }
}
