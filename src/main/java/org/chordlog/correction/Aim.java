package org.chordlog.correction;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/**
 * The radius a job is bent to, with its specification limits, mm. One limit may be absent: its side
 * then never counts as out of tolerance. The target is what is aimed at in any case.
 */
public record Aim(double targetMm, @Nullable Double lowerMm, @Nullable Double upperMm) {
  static final double PERMIL = 1000;

  public Aim {
    Check.positive("targetMm", targetMm);
    if (lowerMm == null && upperMm == null) {
      throw new BadInput(
          "limits", "none", "leave nothing to weigh a correction against", "one limit or two");
    }
    if (lowerMm != null && !(Check.positive("lowerMm", lowerMm) < targetMm)) {
      throw new BadInput("lowerMm", lowerMm, "is not below the target", bound("below", targetMm));
    }
    if (upperMm != null && !(Check.finite("upperMm", upperMm) > targetMm)) {
      throw new BadInput("upperMm", upperMm, "is not above the target", bound("above", targetMm));
    }
  }

  private static Sentence bound(String side, double mm) {
    return Sentence.of("%s %s", side, Quantity.stated(mm));
  }

  /** Target ± tolerance, both mm. */
  public static Aim symmetric(double targetMm, double toleranceMm) {
    Check.positive("toleranceMm", toleranceMm);
    return new Aim(targetMm, targetMm - toleranceMm, targetMm + toleranceMm);
  }

  /** {@link BadInput} for a specification without limits. */
  public static Aim of(Specification specification) {
    return new Aim(
        specification.targetMm(), specification.lowerLimitMm(), specification.upperLimitMm());
  }

  /**
   * Half the width between the limits, permil; with one limit its distance from the target. The
   * unit in which losses and priors are expressed.
   */
  public double halfTolerance() {
    double low = lowerMm == null ? targetMm : lowerMm;
    double high = upperMm == null ? targetMm : upperMm;
    double sides = lowerMm == null || upperMm == null ? 1 : 2;
    return PERMIL * (high - low) / sides / targetMm;
  }

  /** Permil above which a piece is too tight; infinite without a lower limit of the radius. */
  double tightLimit() {
    return lowerMm == null ? Double.POSITIVE_INFINITY : PERMIL * (targetMm / lowerMm - 1);
  }

  /** Permil below which a piece is too open; infinite without an upper limit of the radius. */
  double openLimit() {
    return upperMm == null ? Double.NEGATIVE_INFINITY : PERMIL * (targetMm / upperMm - 1);
  }

  /** Deviation of a curvature, 1/mm, from the target's, permil; −1000 for flat. */
  public double permil(double curvaturePerMm) {
    return PERMIL * (curvaturePerMm * targetMm - 1);
  }

  /** A difference of curvatures, 1/mm, in permil of the target's. */
  double permilOfDifference(double perMm) {
    return PERMIL * perMm * targetMm;
  }

  /** The inverse of {@link #permilOfDifference}. */
  double perMm(double permil) {
    return permil / PERMIL / targetMm;
  }

  /** Radius at a deviation, mm; infinite where nothing of the bend is left. */
  public double radiusMm(double permil) {
    double ratio = 1 + permil / PERMIL;
    return ratio > 0 ? targetMm / ratio : Double.POSITIVE_INFINITY;
  }

  /** A standard deviation or uncertainty near the target, permil to mm of radius. */
  public double mm(double permil) {
    return targetMm * permil / PERMIL;
  }
}
