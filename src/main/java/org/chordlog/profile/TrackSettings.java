package org.chordlog.profile;

import org.chordlog.measure.Check;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.jspecify.annotations.Nullable;

/**
 * What telling one piece from the next needs: how the section runs, what measures it, and the
 * lengths known beforehand.
 */
public record TrackSettings(Feed feed, Gauge gauge, KnownLengths lengths) {
  /** The greatest feed unless another is stated, mm/s. */
  public static final double MOST_MM_PER_SECOND = 400;

  /**
   * Where lengths come from, whether a piece may come from either end, and the greatest feed there
   * is.
   */
  public record Feed(LengthSource source, boolean bothWays, double mostMmPerSecond) {
    public Feed {
      Check.positive("mostMmPerSecond", mostMmPerSecond);
    }
  }

  /**
   * Whether a bend makes depths negative (the inner face); depth less the zero in free air, null to
   * learn it; step and travel of the indicator; the span.
   */
  public record Gauge(
      boolean concave, @Nullable Long freeAirNm, long stepNm, long travelNm, double spanMm) {
    public Gauge {
      Check.within("stepNm", stepNm, 1, Integer.MAX_VALUE);
      Check.within("travelNm", travelNm, stepNm, Long.MAX_VALUE);
      Check.positive("spanMm", spanMm);
    }
  }

  public LengthSource source() {
    return feed.source();
  }

  public boolean bothWays() {
    return feed.bothWays();
  }

  public double mostMmPerSecond() {
    return feed.mostMmPerSecond();
  }

  public boolean concave() {
    return gauge.concave();
  }

  public @Nullable Long freeAirNm() {
    return gauge.freeAirNm();
  }

  public long stepNm() {
    return gauge.stepNm();
  }

  public long travelNm() {
    return gauge.travelNm();
  }

  public double spanMm() {
    return gauge.spanMm();
  }
}
