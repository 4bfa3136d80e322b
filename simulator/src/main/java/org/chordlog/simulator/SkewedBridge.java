package org.chordlog.simulator;

import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.Face;
import org.chordlog.measure.FootKind;
import org.jspecify.annotations.Nullable;

/**
 * The depth that a bridge turned out of the bend plane reads on a bent round tube, in three
 * dimensions: the tube is a torus, the plunger stands on its crest, and the two feet touch where
 * they touch. Nothing is expanded or approximated but by search.
 */
record SkewedBridge(double halfSpanMm, double footRadiusMm, @Nullable FootKind kind) {
  private static final int STEPS = 90;
  private static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  /** Of a tube by the radius of its centreline and of its outside, mm; the angle in degrees. */
  double depthMm(double centrelineMm, double tubeMm, Face face, double degrees) {
    double angle = Math.toRadians(degrees);
    double sign = face == Face.INNER ? -1 : 1;
    if (kind == FootKind.ACROSS) {
      return across(centrelineMm, tubeMm, sign, angle);
    }
    double foot = kind == FootKind.BALL || kind == null ? footRadiusMm : 0;
    double x = halfSpanMm * Math.cos(angle);
    double y = halfSpanMm * Math.sin(angle);
    return -height(centrelineMm, tubeMm + foot, sign, x, y);
  }

  /**
   * Height of a torus over its crest. On the inner face the bridge looks at the axis of the bend,
   * so that up is towards it.
   */
  private static double height(double centre, double tube, double sign, double x, double y) {
    double side = Math.sqrt(tube * tube - y * y);
    double crest = centre + sign * tube;
    double radius = centre + sign * side;
    return sign * (Math.sqrt(radius * radius - x * x) - crest);
  }

  /**
   * A straight line, or a cylinder, through the foot and across the bridge rests at its highest.
   */
  private double across(double centre, double tube, double sign, double angle) {
    double most =
        footRadiusMm == 0
            ? alongLine(centre, tube, sign, angle, halfSpanMm)
            : highest(
                offset ->
                    alongLine(centre, tube, sign, angle, halfSpanMm + offset)
                        + Math.sqrt(footRadiusMm * footRadiusMm - offset * offset)
                        - footRadiusMm,
                -0.999 * footRadiusMm,
                0.999 * footRadiusMm);
    return -most;
  }

  private static double alongLine(
      double centre, double tube, double sign, double angle, double from) {
    double cosine = Math.cos(angle);
    double sine = Math.sin(angle);
    double reach = 0.9 * tube;
    return highest(
        s -> height(centre, tube, sign, from * cosine - s * sine, from * sine + s * cosine),
        (-reach - from * sine) / cosine,
        (reach - from * sine) / cosine);
  }

  /** Golden section on a function with one maximum. */
  private static double highest(DoubleUnaryOperator f, double low, double high) {
    double a = low;
    double b = high;
    for (int i = 0; i < STEPS; i++) {
      double c = b - GOLDEN * (b - a);
      double d = a + GOLDEN * (b - a);
      if (f.applyAsDouble(c) > f.applyAsDouble(d)) {
        b = d;
      } else {
        a = c;
      }
    }
    return f.applyAsDouble((a + b) / 2);
  }
}
