package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * The radius asked for on a face, mm, with its specification limits; a limit may be absent. {@code
 * decideBy} says what of a piece must lie within them where its profile is known.
 */
public record Specification(
    Face face,
    double targetMm,
    @Nullable Double lowerLimitMm,
    @Nullable Double upperLimitMm,
    DecideBy decideBy) {
  public Specification {
    Check.positive("targetMm", targetMm);
    if (lowerLimitMm != null) {
      Check.positive("lowerLimitMm", lowerLimitMm);
    }
    if (upperLimitMm != null) {
      Check.positive("upperLimitMm", upperLimitMm);
    }
    if (lowerLimitMm != null && upperLimitMm != null && lowerLimitMm >= upperLimitMm) {
      throw new BadInput(
          "lowerLimitMm",
          lowerLimitMm,
          "is not below the upper limit",
          Sentence.of("below %s", Quantity.stated(upperLimitMm)));
    }
  }

  /** By the mean. */
  public Specification(
      Face face, double targetMm, @Nullable Double lowerLimitMm, @Nullable Double upperLimitMm) {
    this(face, targetMm, lowerLimitMm, upperLimitMm, DecideBy.MEAN);
  }
}
