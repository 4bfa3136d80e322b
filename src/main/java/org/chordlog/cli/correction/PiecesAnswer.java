package org.chordlog.cli.correction;

import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.correction.closing.BentPiece;
import org.chordlog.correction.closing.Joining;
import org.chordlog.correction.closing.RingOfPieces;
import org.jspecify.annotations.Nullable;

/** Pieces of a ring: what they leave open, and the radius that closes it or the order to join. */
record PiecesAnswer(
    List<BentPiece> pieces,
    double kinkDegrees,
    double kinkStandardUncertaintyDegrees,
    double arcGapMm,
    double arcGapStandardUncertaintyMm,
    @Nullable Double closingRadiusMm,
    @Nullable Double closingStandardUncertaintyMm,
    @Nullable Double openingMm)
    implements ClosingAnswer {
  static PiecesAnswer of(
      RingOfPieces ring, Joining.@Nullable Found joined, @Nullable Double leftMm) {
    return new PiecesAnswer(
        ring.bent(),
        ring.kinkDegrees(),
        Math.toDegrees(ring.kinkStandardUncertainty()),
        ring.arcGapMm(),
        ring.arcGapStandardUncertaintyMm(),
        leftMm == null ? null : (Double) ring.closingRadiusMm(leftMm),
        leftMm == null ? null : (Double) ring.closingStandardUncertaintyMm(leftMm),
        joined == null ? null : (Double) joined.openingMm());
  }

  @Override
  public String text(LengthOptions lengths) {
    Double radius = closingRadiusMm;
    Double opening = openingMm;
    if (radius != null) {
      double u = closingStandardUncertaintyMm == null ? 0 : closingStandardUncertaintyMm;
      return pieces.size()
          + " pieces leave "
          + ClosingAnswer.degrees(kinkDegrees)
          + ": bend the rest to "
          + ClosingAnswer.with(lengths, radius, u)
          + ".";
    }
    String gap =
        (arcGapMm < 0 ? "overlap of " : "gap of ")
            + ClosingAnswer.with(lengths, Math.abs(arcGapMm), arcGapStandardUncertaintyMm)
            + " along the arc, kink "
            + ClosingAnswer.degrees(kinkDegrees);
    return opening == null
        ? pieces.size() + " pieces: " + gap + "."
        : "Join "
            + pieces.stream().map(BentPiece::name).collect(Collectors.joining(", "))
            + " in this order: "
            + gap
            + ", ends "
            + lengths.textWithUnit(opening, 2)
            + " apart at the last joint.";
  }
}
