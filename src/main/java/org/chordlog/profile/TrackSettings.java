package org.chordlog.profile;

import org.chordlog.measure.Check;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.jspecify.annotations.Nullable;

/**
 * What telling one piece from the next needs: where lengths come from; whether a piece may come
 * from either end; whether a bend makes depths negative (the inner face); the greatest feed there
 * is; depth less the zero in free air, null to learn it; step and travel of the indicator; the
 * span; and the lengths known beforehand.
 */
public record TrackSettings(
    LengthSource source,
    boolean bothWays,
    boolean concave,
    double mostMmPerSecond,
    @Nullable Long freeAirNm,
    long stepNm,
    long travelNm,
    double spanMm,
    KnownLengths lengths) {
  /** The greatest feed unless another is stated, mm/s. */
  public static final double MOST_MM_PER_SECOND = 400;

  public TrackSettings {
    Check.positive("mostMmPerSecond", mostMmPerSecond);
    Check.within("stepNm", stepNm, 1, Integer.MAX_VALUE);
    Check.within("travelNm", travelNm, stepNm, Long.MAX_VALUE);
    Check.positive("spanMm", spanMm);
  }
}
