package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.profile.Shape;
import org.jspecify.annotations.Nullable;

/**
 * How a piece that ran through closes, from its profile between the middles of rise and fall: the
 * turn it makes against the turn that is asked for; of a full turn also where the end would lie.
 */
record ClosingOfLine(
    @JsonPropertyDescription("what the developed length or angle asks for") double askedDegrees,
    PieceOfLineView.Measure turnDegrees,
    @JsonPropertyDescription("of a full turn: missing along, below 0 overlapping")
        PieceOfLineView.@Nullable Measure gapMm,
    @JsonPropertyDescription("of a full turn: across, above 0 inwards")
        PieceOfLineView.@Nullable Measure offsetMm) {

  /** Null where the job says neither. */
  static @Nullable ClosingOfLine of(PieceOfLine piece) {
    Double asked = ClosingRoutes.askedDegrees(piece.job());
    if (asked == null) {
      return null;
    }
    Shape shape = Shape.ofRing(piece.profile(), piece.result(), piece.settings());
    boolean ring = ClosingRoutes.fullTurn(asked);
    return new ClosingOfLine(
        asked,
        PieceOfLineView.Measure.of(shape.turnDegrees()),
        ring ? PieceOfLineView.Measure.of(shape.gapAlong()) : null,
        ring ? PieceOfLineView.Measure.of(shape.offsetAcross()) : null);
  }
}
