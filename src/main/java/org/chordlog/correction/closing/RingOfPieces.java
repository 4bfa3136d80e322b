package org.chordlog.correction.closing;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * A ring welded of pieces, as far as they are bent. {@code commonMm}: standard uncertainty that all
 * radii have in common (zero and span of the gauge), which more pieces do not average out; {@code
 * lengthMm}: that of each developed length.
 */
public record RingOfPieces(List<BentPiece> bent, double commonMm, double lengthMm) {
  public RingOfPieces {
    bent = List.copyOf(bent);
    Check.notNegative("commonMm", commonMm);
    Check.notNegative("lengthMm", lengthMm);
  }

  /** What the pieces lack of a full turn, 2π − ΣSκ; negative: too much. */
  public double kinkRadians() {
    return 2 * Math.PI - bent.stream().mapToDouble(BentPiece::angleRadians).sum();
  }

  public double kinkDegrees() {
    return Math.toDegrees(kinkRadians());
  }

  /** Of the kink at a joint, radians. */
  public double kinkStandardUncertaintyRadians() {
    double own = 0;
    double common = 0;
    double lengths = 0;
    for (BentPiece piece : bent) {
      double each = piece.angleUncertainty(piece.standardUncertaintyMm());
      own += each * each;
      common += piece.angleUncertainty(commonMm);
      lengths += lengthMm * lengthMm / piece.radiusMm() / piece.radiusMm();
    }
    return Math.sqrt(own + common * common + lengths);
  }

  /** Along the arc of a ring that has all its pieces, at the radius of its developed length. */
  public double arcGapMm() {
    return kinkRadians() * meanRadiusMm();
  }

  public double arcGapStandardUncertaintyMm() {
    return kinkStandardUncertaintyRadians() * meanRadiusMm();
  }

  private double meanRadiusMm() {
    return bent.stream().mapToDouble(BentPiece::developedMm).sum() / (2 * Math.PI);
  }

  /**
   * Radius for what is left to bend, so that the ring closes: κ = (2π − ΣSκ)/S_left. {@link
   * BadInput} where the bent pieces turn through a full circle already.
   */
  public double closingRadiusMm(double leftDevelopedMm) {
    double left = Check.positive("leftDevelopedMm", leftDevelopedMm);
    if (!(kinkRadians() > 0)) {
      throw new BadInput(
          "pieces", bent.size(), "turn through a full circle already", "less than 360 degrees");
    }
    return left / kinkRadians();
  }

  /** Of that radius, from the pieces that are bent. */
  public double closingStandardUncertaintyMm(double leftDevelopedMm) {
    double radius = closingRadiusMm(leftDevelopedMm);
    return radius / kinkRadians() * kinkStandardUncertaintyRadians();
  }
}
