package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import org.chordlog.measure.Face;
import org.chordlog.measure.OrderDetails;
import org.chordlog.profile.Shape;
import org.chordlog.radius.Faces;
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
  private static final double NEARLY_FULL = 359.95;

  /** Null where the job says neither. */
  static @Nullable ClosingOfLine of(PieceOfLine piece) {
    Double asked = askedDegrees(piece);
    if (asked == null) {
      return null;
    }
    Shape shape = Shape.ofRing(piece.profile(), piece.result(), piece.settings());
    boolean ring = asked >= NEARLY_FULL;
    return new ClosingOfLine(
        asked,
        PieceOfLineView.Measure.of(shape.turnDegrees()),
        ring ? PieceOfLineView.Measure.of(shape.gapAlong()) : null,
        ring ? PieceOfLineView.Measure.of(shape.offsetAcross()) : null);
  }

  private static @Nullable Double askedDegrees(PieceOfLine piece) {
    OrderDetails details = piece.job().details();
    Double length = details.developedLengthMm();
    if (length == null) {
      return details.developedAngleDegrees();
    }
    var asked = piece.job().specification();
    double centreline =
        Faces.convertMm(asked.targetMm(), piece.job().section(), asked.face(), Face.CENTRELINE);
    return Math.toDegrees(length / centreline);
  }
}
