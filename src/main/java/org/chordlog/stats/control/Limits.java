package org.chordlog.stats.control;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/** Specification limits and target of a characteristic; each may be absent. */
public record Limits(@Nullable Double lower, @Nullable Double upper, @Nullable Double target) {
  public static final Limits NONE = new Limits(null, null, null);

  public Limits {
    finite("lowerSpecificationLimit", lower);
    finite("upperSpecificationLimit", upper);
    finite("target", target);
    if (lower != null && upper != null && lower >= upper) {
      throw new BadInput(
          "lowerSpecificationLimit",
          lower,
          "is not below the upper specification limit",
          "below " + upper);
    }
  }

  /** The specification limits and the target. */
  public static Limits of(Specification specification) {
    return new Limits(
        specification.lowerLimitMm(), specification.upperLimitMm(), specification.targetMm());
  }

  public boolean any() {
    return lower != null || upper != null;
  }

  private static void finite(String field, @Nullable Double value) {
    if (value != null) {
      Check.finite(field, value);
    }
  }
}
