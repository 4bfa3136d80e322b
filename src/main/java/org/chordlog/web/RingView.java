package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.correction.closing.BentPiece;
import org.chordlog.correction.closing.Joining;
import org.chordlog.correction.closing.RingOfPieces;
import org.chordlog.measure.Face;
import org.jspecify.annotations.Nullable;

/** A ring that is welded of several pieces of a job; lengths on the centreline. */
record RingView(
    @JsonPropertyDescription("pieces that the whole ring takes") int pieces,
    @JsonPropertyDescription("of each piece") double developedLengthMm,
    @JsonPropertyDescription("the pieces measured, in the order in which they are joined")
        List<Bent> bent,
    @JsonPropertyDescription("what they lack of a full turn; below 0: too much") double kinkDegrees,
    double kinkStandardUncertaintyDegrees,
    @JsonPropertyDescription("what is left to bend; null for a whole ring") @Nullable Rest rest,
    @JsonPropertyDescription("the whole ring's joint; null while pieces are left to bend")
        @Nullable Joint joint) {
  /** A measured piece. */
  record Bent(int piece, double radiusMm, double standardUncertaintyMm) {
    static Bent of(BentPiece piece) {
      return new Bent(
          Integer.parseInt(piece.name()), piece.radiusMm(), piece.standardUncertaintyMm());
    }
  }

  /** Radius of what is left to bend, so that the ring closes. */
  record Rest(
      int pieces,
      double radiusMm,
      double standardUncertaintyMm,
      Face face,
      @JsonPropertyDescription("the radius on that face, which the job specifies")
          double specifiedRadiusMm) {}

  /** Where the last piece meets the first one, all other joints being true. */
  record Joint(
      @JsonPropertyDescription("along the arc, open: above 0") double arcGapMm,
      double standardUncertaintyMm,
      @JsonPropertyDescription("distance between the ends") double openingMm) {
    static Joint of(RingOfPieces ring, Joining.Found found) {
      return new Joint(ring.arcGapMm(), ring.arcGapStandardUncertaintyMm(), found.openingMm());
    }
  }

  static RingView of(
      int pieces,
      double developedMm,
      RingOfPieces ring,
      @Nullable Rest rest,
      @Nullable Joint joint) {
    return new RingView(
        pieces,
        developedMm,
        ring.bent().stream().map(Bent::of).toList(),
        ring.kinkDegrees(),
        Math.toDegrees(ring.kinkStandardUncertaintyRadians()),
        rest,
        joint);
  }
}
