package org.chordlog.stats.capability;

import java.util.Arrays;
import org.chordlog.stats.math.AndersonDarling;
import org.chordlog.stats.math.JohnsonFit;
import org.chordlog.stats.math.Moments;
import org.jspecify.annotations.Nullable;

/**
 * The newest values (up to {@value Window#SIZE}) as a distribution, judged and fitted once for all
 * who ask: normality at 5 %, and where it is refused a Johnson distribution.
 */
final class Shape {
  /** A fit and its A² against the values. */
  record Fitted(JohnsonFit distribution, double distance) {}

  private final double[] values;
  private final Moments moments = new Moments();
  private final @Nullable AndersonDarling test;
  private final @Nullable Fitted fitted;

  Shape(double[] values) {
    this.values = values;
    Arrays.stream(values).forEach(moments::add);
    boolean enough = values.length >= AndersonDarling.LEAST && moments.sumOfSquares() > 0;
    test = enough ? AndersonDarling.of(values) : null;
    fitted = test != null && refused() ? fit(test.statistic()) : null;
  }

  private @Nullable Fitted fit(double normalDistance) {
    JohnsonFit fit = JohnsonFit.of(values);
    double distance = fit == null ? Double.POSITIVE_INFINITY : fit.distance(values);
    return fit == null || distance >= normalDistance ? null : new Fitted(fit, distance);
  }

  double[] values() {
    return values;
  }

  Moments moments() {
    return moments;
  }

  /** Null for too few values, or equal ones. */
  @Nullable AndersonDarling test() {
    return test;
  }

  /** Whether normality is refused at 5 %. */
  boolean refused() {
    return test != null && test.pValue() < 0.05;
  }

  /**
   * Null where normality is not refused, where a value lies outside a bounded fit, or where the fit
   * is no nearer to the values than the normal one: then there is nothing to defend.
   */
  @Nullable Fitted fitted() {
    return fitted;
  }
}
