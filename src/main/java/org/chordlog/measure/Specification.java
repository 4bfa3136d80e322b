package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/** The radius asked for on a face, mm, with its specification limits; a limit may be absent. */
public record Specification(
    Face face, double targetMm, @Nullable Double lowerLimitMm, @Nullable Double upperLimitMm) {
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
}
