package org.chordlog.radius;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;

/**
 * From the bend of the measured face, 1/mm, positive in the sense of a bend, to the radius on the
 * specified one. {@code sign} is that of a depth on the measured face; {@code stepMm} the distance
 * between the faces.
 */
record SpecifiedFace(SetUp setUp, int sign, double stepMm) {
  static SpecifiedFace of(SetUp setUp) {
    return new SpecifiedFace(
        setUp,
        Faces.sign(setUp.measuredFace()),
        Faces.stepMm(setUp.section(), setUp.measuredFace(), setUp.specifiedFace()));
  }

  /** A bend of the measured face on the specified one. */
  double bend(double measured) {
    return measured / (1 + stepMm * measured);
  }

  /**
   * The value is the bend as seen; the interval stands around the centre, the bend less the mean
   * bias of the skew. Flat when either is below the decision threshold 1.645 u.
   */
  RadiusEstimate estimate(double bend, double centre, double u, double degrees) {
    double threshold = StudentT.ONE_SIDED.quantile(degrees) * u;
    if (Math.max(bend, centre) < -threshold) {
      throw wrongFace(bend);
    }
    double ratio = 1 + stepMm * bend;
    if (!(Math.min(ratio, 1 + stepMm * centre) > 0)) {
      throw Faces.noRoom(1 / bend, setUp.measuredFace(), setUp.specifiedFace(), -stepMm);
    }
    double u2 = u / (ratio * ratio);
    return Math.min(bend, centre) <= threshold
        ? flat(bend / ratio, Math.max(centre, threshold) + threshold, u2, degrees)
        : curved(bend / ratio, bend(centre), u2, degrees);
  }

  private RadiusEstimate curved(double bend, double centre, double u, double degrees) {
    double k = StudentT.COVERAGE.quantile(degrees);
    @Nullable Double upper = centre > k * u ? 1 / (centre - k * u) : null;
    return new RadiusEstimate(1 / bend, 1 / (centre + k * u), upper, signed(bend), u, k, degrees);
  }

  /**
   * Flat: the least radius named is where the detection limit, twice the decision threshold, is
   * reached (the terms of ISO 11929-1; own derivation), or beyond where a skewed bridge may hide a
   * bend.
   */
  private RadiusEstimate flat(double bend, double detection, double u, double degrees) {
    double k = StudentT.COVERAGE.quantile(degrees);
    double largest = Math.max(0, 1 / detection + stepMm);
    return new RadiusEstimate(null, largest, null, signed(bend), u, k, degrees);
  }

  private double signed(double bend) {
    return Faces.sign(setUp.specifiedFace()) * bend;
  }

  private BadInput wrongFace(double bend) {
    String seen = sign * bend > 0 ? "convex" : "concave";
    return new BadInput(
        "depthMm",
        sign * bend > 0 ? "positive" : "negative",
        "means a " + seen + " face, but the bridge stands on the " + faceWord(),
        "positive on the outer face, negative on the inner face");
  }

  private String faceWord() {
    return setUp.measuredFace().words();
  }
}
