package org.chordlog.radius;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;

/**
 * Depth to radius with its uncertainty for one set-up, made once and used for every reading. The
 * uncertainty is propagated in curvature (JCGM 100) and inverted, so the interval of a large radius
 * is asymmetric or open upwards. Immutable.
 */
public final class RadiusModel {
  /** A span in inches is no whole number of nanometres. */
  private static final double ROUNDING_MM = 1e-6;

  private final SetUp setUp;
  private final EffectiveBridge bridge;
  private final DepthSpread spread;
  private final double fixedDepthVariance;
  private final SkewModel skew;
  private final SpecifiedFace face;
  private final int sign;

  private RadiusModel(SetUp setUp) {
    this.setUp = setUp;
    bridge = EffectiveBridge.of(setUp);
    spread = DepthSpread.of(setUp);
    fixedDepthVariance = spread.fixed();
    skew = SkewModel.of(setUp, bridge);
    face = SpecifiedFace.of(setUp);
    sign = face.sign();
  }

  /** The model of one set-up, its calibration taken in where it has one. */
  public static RadiusModel of(SetUp setUp) {
    return new RadiusModel(setUp);
  }

  /**
   * Radius on the specified face. {@link BadInput} when no bend gives that depth.
   *
   * @param depthNm mean depth relative to the zero, positive on a convex face
   * @param scatterNm standard deviation of the samples it is the mean of
   * @param sampleCount how many samples
   */
  public RadiusEstimate estimate(long depthNm, long scatterNm, int sampleCount) {
    Check.within("scatterNm", scatterNm, 0, Long.MAX_VALUE);
    Check.within("sampleCount", sampleCount, 1, Integer.MAX_VALUE);
    double variance = DepthSpread.ofMean(scatterNm, sampleCount);
    return estimateOfMean(depthNm, variance, sampleCount - 1.0);
  }

  /**
   * The same for a depth whose own variance, mm², and its degrees of freedom are known otherwise,
   * as of a mean along a piece; degrees of 0 or less stand for infinitely many.
   */
  public RadiusEstimate estimateOfMean(long depthNm, double varianceOfMeanMm2, double ownDegrees) {
    Check.notNegative("varianceOfMeanMm2", varianceOfMeanMm2);
    Slope slope = slope(depthNm);
    double variance = variance(slope, varianceOfMeanMm2);
    double degrees = degreesOfFreedom(slope, varianceOfMeanMm2, ownDegrees, variance);
    double bend = sign * slope.curvaturePerMm();
    double centre = bend - sign * skew.bias(slope.curvaturePerMm());
    return face.estimate(bend, centre, Math.sqrt(variance), degrees);
  }

  /** The part of the uncertainty that is new at each placing; 0 of a flat, which has no radius. */
  public Placing placing(long depthNm, long scatterNm, int sampleCount) {
    if (estimate(depthNm, scatterNm, sampleCount).flat()) {
      return new Placing(0, 0);
    }
    Slope slope = slope(depthNm);
    double kappa = slope.curvaturePerMm();
    double depth = spread.step() + DepthSpread.ofMean(scatterNm, sampleCount);
    double skewed = skew.deviation(slope.curvaturePerMm());
    double variance = slope.byDepth() * slope.byDepth() * depth + skewed * skewed;
    double toRadius = -Math.signum(kappa) / (kappa * kappa);
    return new Placing(Math.sqrt(variance) * Math.abs(toRadius), skew.bias(kappa) * toRadius);
  }

  /** The same uncertainty line by line, in mm of radius, or in 1/km for a flat. */
  public Budget budget(long depthNm, long scatterNm, int sampleCount) {
    return ReadingBudget.of(this, depthNm, scatterNm, sampleCount);
  }

  /** What a bridge turned by the set-up's skew limit, or by 1° if it has none, would read here. */
  public String skewSentence(long depthNm) {
    double limit = setUp.bridge().skewLimitDegrees();
    double along = slope(depthNm).curvaturePerMm();
    double degrees = limit > 0 ? limit : 1;
    return Skew.sentence(skew.seen(along, degrees) / along, degrees);
  }

  /**
   * Decides after ISO 14253-1; limits on another face than the set-up's specified one are
   * converted.
   */
  public Decision decide(RadiusEstimate estimate, Specification specification) {
    return decide(estimate, specification, Conformity.ISO_14253_1);
  }

  /** Against both limits after that rule of conformity. */
  public Decision decide(RadiusEstimate estimate, Specification specification, Conformity rule) {
    Face face = specification.face();
    return rule.decide(
        estimate,
        limit(specification.lowerLimitMm(), face),
        limit(specification.upperLimitMm(), face));
  }

  /** Everything but the depth that a radius is computed from. */
  public SetUp setUp() {
    return setUp;
  }

  EffectiveBridge bridge() {
    return bridge;
  }

  SkewModel skew() {
    return skew;
  }

  DepthSpread spread() {
    return spread;
  }

  Slope slope(long depthNm) {
    return Slope.at(depthMm(depthNm), bridge.spanMm(), bridge.footRadiusMm());
  }

  /** Depth less the zero offset, refused where no bend can give it. */
  double depthMm(long depthNm) {
    return checked(Length.mm(depthNm));
  }

  /** The calibrated span, else the nominal one. */
  public double spanMm() {
    return bridge.spanMm();
  }

  /** Curvature of the measured face for a depth less the zero, positive in the sense of a bend. */
  public double bendPerMm(long depthNm) {
    return sign * slope(depthNm).curvaturePerMm();
  }

  /** How much {@link #bendPerMm} changes a mm of depth, as an amount. */
  public double bendByDepth(long depthNm) {
    return slope(depthNm).byDepth();
  }

  /** Depth that a bend of the measured face gives, the inverse of {@link #bendPerMm}. */
  public long depthNmOfBend(double bendPerMm) {
    double chord = Chord.depthMm(sign * bendPerMm, bridge.spanMm(), bridge.footRadiusMm());
    return Length.nm(chord + bridge.zeroOffsetMm());
  }

  /** Depth that a radius on the specified face would give, refused where the feet can't reach. */
  public double depthForMm(double radiusMm) {
    Face measured = setUp.measuredFace();
    double there = Faces.convertMm(radiusMm, setUp.section(), setUp.specifiedFace(), measured);
    double chord = Chord.depthMm(sign / there, bridge.spanMm(), bridge.footRadiusMm());
    return chord + bridge.zeroOffsetMm();
  }

  /** Curvature in the sense of the bend on the specified face from the signed measured one. */
  double bendOnSpecifiedFace(double signedPerMm) {
    return face.bend(sign * signedPerMm);
  }

  /** A limit that no bend of the section can reach on the specified face limits nothing. */
  private @Nullable Double limit(@Nullable Double limitMm, Face face) {
    if (limitMm == null) {
      return null;
    }
    double converted = limitMm + Faces.stepMm(setUp.section(), face, setUp.specifiedFace());
    return converted > 0 ? converted : null;
  }

  private double checked(double depthMm) {
    double travel = setUp.indicator().travelMm();
    if (Math.abs(depthMm) > travel) {
      throw new BadInput(
          "depthMm", depthMm, "is beyond the indicator's travel", Chord.within(travel));
    }
    double offset = depthMm - bridge.zeroOffsetMm();
    double half = bridge.spanMm() / 2;
    if (Math.abs(offset) > half + ROUNDING_MM) {
      throw new BadInput("depthMm", depthMm, "is beyond half the span", Chord.within(half));
    }
    return Math.abs(offset) > half ? Math.copySign(half, offset) : offset;
  }

  private double variance(Slope slope, double reading) {
    double skewed = skew.deviation(slope.curvaturePerMm());
    return slope.byDepth() * slope.byDepth() * (fixedDepthVariance + reading)
        + bridge.variance(slope.bySpan(), -slope.byDepth(), slope.byFoot())
        + skewed * skewed;
  }

  /** Welch-Satterthwaite (GUM G.4.1); what is only known by its bounds has infinitely many. */
  private double degreesOfFreedom(Slope slope, double reading, double nu, double variance) {
    double depth2 = slope.byDepth() * slope.byDepth();
    double calibration = bridge.variance(slope.bySpan(), -slope.byDepth(), slope.byFoot());
    double sum =
        share(depth2 * reading, nu)
            + share(depth2 * spread.zero(), spread.zeroDegrees())
            + share(calibration, bridge.degreesOfFreedom());
    return Budget.effective(variance, sum);
  }

  private static double share(double variance, double degrees) {
    return variance == 0 || degrees <= 0 ? 0 : variance * variance / degrees;
  }
}
