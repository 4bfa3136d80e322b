package org.chordlog.radius;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;

/**
 * What a bridge that stands askew sees, by the kind of its feet. Curvatures are those of the face,
 * 1/mm, signed, positive when convex.
 *
 * <ul>
 *   <li>Points, and edges along the piece: Euler's normal curvature, κ₁cos²φ + κ₂sin²φ.
 *   <li>Balls: the same on the surface that their centres run on, a foot radius away.
 *   <li>Edges or rollers across a round section rest where the silhouette is: its radius is ρ₁cos²φ
 *       + ρ₂sin²φ. Across a flat face of width w they rest on its border, nearer to the plunger:
 *       κ₁(1/cos φ − w/(2a)·tan|φ|)², a being half the span.
 * </ul>
 *
 * Feet whose kind is not known are taken for points, which err most on a round section.
 */
final class SkewModel {
  private static final int STEPS = 200;

  /** Beyond it an edge would reach the crest, and no depth is left. */
  private static final double LEAST_PART = 0.05;

  private enum Form {
    POINTS,
    BALLS,
    SILHOUETTE,
    BORDER
  }

  private final Form form;
  private final double across;
  private final double footRadius;
  private final double border;
  private final Skew.Spread spread;

  private SkewModel(Form form, SetUp setUp, double footRadius, double halfSpan) {
    this.form = form;
    this.footRadius = footRadius;
    across = setUp.section().transverseCurvaturePerMm();
    border = width(setUp.section()) / 2 / halfSpan;
    double limit = setUp.bridge().skewLimitDegrees();
    spread = form == Form.BORDER ? ofBorder(limit) : Skew.Spread.within(limit);
  }

  static SkewModel of(SetUp setUp, EffectiveBridge bridge) {
    return new SkewModel(form(setUp), setUp, bridge.footRadiusMm(), bridge.spanMm() / 2);
  }

  private static Form form(SetUp setUp) {
    Bridge bridge = setUp.bridge();
    @Nullable FootKind kind = bridge.footKind();
    boolean round = setUp.section().transverseCurvaturePerMm() > 0;
    if (kind == FootKind.BALL) {
      return Form.BALLS;
    }
    if (kind == FootKind.ACROSS && (round || width(setUp.section()) > 0)) {
      return round ? Form.SILHOUETTE : Form.BORDER;
    }
    return Form.POINTS;
  }

  /** Of a flat face; 0 where it is round or not known. */
  private static double width(Section section) {
    if (section instanceof Section.Flat flat) {
      return flat.widthMm();
    }
    return section instanceof Section.Box box ? box.widthMm() : 0;
  }

  /** Curvature along the bend from the one seen under an angle of that tangent. */
  double along(double seen, double tangent) {
    double t = tangent * tangent;
    return switch (form) {
      case POINTS -> seen - (across - seen) * t;
      case BALLS -> inner(centres(seen) - (centres(across) - centres(seen)) * t);
      case SILHOUETTE -> seen / (1 + (1 - seen / across) * t);
      case BORDER -> seen / part(tangent);
    };
  }

  /** Curvature seen under an angle, from that along the bend. */
  double seen(double along, double degrees) {
    double sine = StrictMath.sin(StrictMath.toRadians(degrees));
    double part = sine * sine;
    return switch (form) {
      case POINTS -> Skew.normalCurvature(along, across, degrees);
      case BALLS -> inner(Skew.normalCurvature(centres(along), centres(across), degrees));
      case SILHOUETTE -> along / ((1 - part) + along / across * part);
      case BORDER -> along * part(StrictMath.tan(StrictMath.toRadians(degrees)));
    };
  }

  /** What is seen too much, in the mean of all angles within the limit. */
  double bias(double seen) {
    return spread.mean() * weight(seen);
  }

  /** Its standard deviation, with the sign of the weight. */
  double deviation(double seen) {
    return spread.deviation() * weight(seen);
  }

  Skew.Spread spread() {
    return spread;
  }

  /** What the factor of the angle is multiplied by. */
  double weight(double seen) {
    return switch (form) {
      case POINTS -> across - seen;
      case BALLS -> (centres(across) - centres(seen)) * square(1 + seen * footRadius);
      case SILHOUETTE -> seen * (1 - seen / across);
      case BORDER -> seen;
    };
  }

  /** What the factor is. */
  String factor() {
    return form == Form.BORDER ? "part" : "tan²";
  }

  /** Of the surface that the centres of balls run on. */
  private double centres(double face) {
    return face / (1 + face * footRadius);
  }

  private double inner(double centres) {
    return centres / (1 - centres * footRadius);
  }

  private double part(double tangent) {
    double slant = Math.sqrt(1 + tangent * tangent) - border * Math.abs(tangent);
    return square(Math.max(LEAST_PART, slant));
  }

  /** Mean and standard deviation of 1 − 1/part over the angles, by Simpson's rule. */
  private Skew.Spread ofBorder(double limitDegrees) {
    double limit = StrictMath.toRadians(limitDegrees);
    double mean = 0;
    double meanSquare = 0;
    for (int i = 0; i <= STEPS; i++) {
      double weight = (i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2) / (3.0 * STEPS);
      double value = 1 - 1 / part(StrictMath.tan(limit * i / STEPS));
      mean += weight * value;
      meanSquare += weight * value * value;
    }
    return new Skew.Spread(mean, Math.sqrt(Math.max(0, meanSquare - mean * mean)));
  }

  private static double square(double x) {
    return x * x;
  }
}
