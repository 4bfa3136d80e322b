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
    @Nullable Rest rest,
    @Nullable Double openingMm)
    implements ClosingAnswer {
  /** What the rest has to be bent to. */
  record Rest(double radiusMm, double standardUncertaintyMm) {}

  static PiecesAnswer of(
      RingOfPieces ring, Joining.@Nullable Found joined, @Nullable Double leftMm) {
    return new PiecesAnswer(
        ring.bent(),
        ring.kinkDegrees(),
        Math.toDegrees(ring.kinkStandardUncertaintyRadians()),
        ring.arcGapMm(),
        ring.arcGapStandardUncertaintyMm(),
        leftMm == null ? null : rest(ring, leftMm),
        joined == null ? null : (Double) joined.openingMm());
  }

  private static Rest rest(RingOfPieces ring, double leftMm) {
    return new Rest(ring.closingRadiusMm(leftMm), ring.closingStandardUncertaintyMm(leftMm));
  }

  @Override
  public String text(LengthOptions lengths) {
    Double opening = openingMm;
    if (rest != null) {
      return pieces.size()
          + " pieces leave "
          + ClosingAnswer.degrees(kinkDegrees)
          + ": bend the rest to "
          + ClosingAnswer.with(lengths, rest.radiusMm(), rest.standardUncertaintyMm())
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
