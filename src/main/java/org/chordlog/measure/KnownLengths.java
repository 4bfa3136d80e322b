package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * What is known of a piece's lengths beforehand, mm, null where it is not: the whole piece; from
 * its front to the middle of the rise and from the middle of the fall to its end; the length of the
 * rise; and the stretches that endless stock is divided into.
 */
public record KnownLengths(
    @Nullable Double pieceMm,
    @Nullable Double leadInMm,
    @Nullable Double leadOutMm,
    @Nullable Double riseMm,
    @Nullable Double stretchMm) {
  /** Nothing is known. */
  public static final KnownLengths NONE = new KnownLengths(null, null, null, null, null);

  public KnownLengths {
    check("pieceMm", pieceMm, 1, 100_000);
    check("leadInMm", leadInMm, 0, 100_000);
    check("leadOutMm", leadOutMm, 0, 100_000);
    check("riseMm", riseMm, 0, 10_000);
    check("stretchMm", stretchMm, 100, 90_000);
  }

  private static void check(String field, @Nullable Double mm, double least, double most) {
    if (mm != null && !(mm >= least && mm <= most)) {
      throw new BadInput(field, mm, "is out of range", least + " to " + most);
    }
  }
}
