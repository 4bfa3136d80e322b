package org.chordlog.study;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/** Specification limits in the study's unit; one or both may be absent. */
public record Tolerance(@Nullable Double lower, @Nullable Double upper) {
  public static final Tolerance NONE = new Tolerance(null, null);

  public Tolerance {
    if (lower != null && upper != null && !(lower < upper)) {
      throw new BadInput("lower limit", lower, "is not below the upper", "below " + upper);
    }
  }

  /** Limits of a radius, mm, as limits of its curvature, 1/mm. */
  public static Tolerance ofRadius(@Nullable Double lowerMm, @Nullable Double upperMm) {
    return new Tolerance(inverse("upper limit", upperMm), inverse("lower limit", lowerMm));
  }

  /** Width between the limits, centred on 0. */
  public static Tolerance ofWidth(double width) {
    double half = Check.positive("tolerance", width) / 2;
    return new Tolerance(-half, half);
  }

  public boolean any() {
    return lower != null || upper != null;
  }

  /** Null unless both limits are there. */
  public @Nullable Double width() {
    return lower == null || upper == null ? null : (Double) (upper - lower);
  }

  /** Distance that k standard deviations are compared with: the width, or twice to one limit. */
  @Nullable Double room(double mean) {
    if (lower == null && upper == null) {
      return null;
    }
    Double width = width();
    double limit = lower == null ? value(upper) : lower;
    return width == null ? 2 * Math.abs(limit - mean) : width;
  }

  private static double value(@Nullable Double limit) {
    return limit == null ? Double.NaN : limit;
  }

  private static @Nullable Double inverse(String field, @Nullable Double radiusMm) {
    return radiusMm == null ? null : (Double) (1 / Check.positive(field, radiusMm));
  }
}
