package org.chordlog.measure;

/**
 * The profile of a piece that ran through the gauge, as it is stored with the piece's reading:
 * {@code packed} bins of depth along the piece and what they were evaluated by, so that the reading
 * comes back bit for bit. {@code pass} counts the times that the piece ran through, from 1; the
 * reading is that of the last pass.
 */
@SuppressWarnings("ArrayRecordComponent") // compared by nobody
public record PassedProfile(int pass, byte[] packed, Basis basis) {
  /**
   * Where lengths came from and on which face they were measured, what was known of the piece's
   * lengths, and what of it must lie within the limits.
   */
  public record Basis(
      LengthSource source, Face lengthFace, KnownLengths known, DecideBy decideBy, Extent extent) {}

  /**
   * The part of a touch that is the piece, mm from where touch began; open where the bend goes on
   * beyond it, as between stretches of endless stock, which are numbered from 1 (0: a whole piece).
   */
  public record Extent(
      double fromMm, double toMm, boolean openStart, boolean openEnd, int stretch) {}

  public PassedProfile {
    Check.within("pass", pass, 1, Integer.MAX_VALUE);
  }
}
