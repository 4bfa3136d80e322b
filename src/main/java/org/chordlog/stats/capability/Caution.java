package org.chordlog.stats.capability;

import org.chordlog.measure.Sentence;

/** A plain word on how far the figures can be trusted. */
public record Caution(Kind kind, Sentence text) {
  public enum Kind {
    NO_DATA,
    TOO_FEW,
    NO_VARIATION,
    NO_LIMITS,
    ONE_LIMIT,
    NOT_IN_CONTROL,
    NOT_NORMAL,
    AUTOCORRELATED,
    GAUGE_TOO_COARSE,
    GAUGE_BIAS,
    RESOLUTION_VISIBLE,
    SUBGROUP_INCOMPLETE,
    NEWEST_ONLY
  }
}
