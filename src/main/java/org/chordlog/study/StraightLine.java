package org.chordlog.study;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.TDistribution;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Interval;

/**
 * A straight line through points by least squares, with residual standard deviation from the
 * residuals themselves (ISO 11095; GUM H.3).
 */
public final class StraightLine {
  private final double[] x;
  private final double[] y;
  private final double meanX;
  private final double squaresX;
  private final double meanY;
  private final double slope;
  private final double residualSquares;

  private StraightLine(double[] x, double[] y) {
    this.x = x.clone();
    this.y = y.clone();
    meanX = Means.mean(x);
    meanY = Means.mean(y);
    squaresX = Means.squares(x);
    double products = 0;
    for (int i = 0; i < x.length; i++) {
      products += (x[i] - meanX) * (y[i] - meanY);
    }
    slope = products / squaresX;
    residualSquares = Arrays.stream(residuals()).map(r -> r * r).sum();
  }

  /** {@link BadInput} for fewer than three points or a single value of x. */
  public static StraightLine of(double[] x, double[] y) {
    if (x.length < 3) {
      throw new BadInput("points", x.length, "are too few for a line with scatter", "3 or more");
    }
    if (Arrays.stream(x).distinct().count() < 2) {
      throw new BadInput("reference", x[0], "is the same in every row", "two values or more");
    }
    return new StraightLine(x, y);
  }

  /** Change of y for one x. */
  public double slope() {
    return slope;
  }

  /** The line at {@code x0}. */
  public double at(double x0) {
    return meanY + slope * (x0 - meanX);
  }

  /** Each y less the line, in their order. */
  public double[] residuals() {
    double[] residuals = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      residuals[i] = y[i] - at(x[i]);
    }
    return residuals;
  }

  /** Points less two. */
  public int degreesOfFreedom() {
    return x.length - 2;
  }

  /** Standard deviation of the points about the line. */
  public double residualDeviation() {
    return Math.sqrt(residualSquares / degreesOfFreedom());
  }

  double residualSquares() {
    return residualSquares;
  }

  /** Standard deviation of the slope. */
  public double slopeDeviation() {
    return residualDeviation() / Math.sqrt(squaresX);
  }

  /** Standard deviation of the fitted value at x0. */
  public double deviationAt(double x0) {
    double off = x0 - meanX;
    return residualDeviation() * Math.sqrt(1.0 / x.length + off * off / squaresX);
  }

  /** Correlation of the fitted value at x0 with the slope. */
  public double correlationAt(double x0) {
    return (x0 - meanX) * slopeDeviation() / deviationAt(x0);
  }

  Interval slope(double confidence) {
    double half = quantile(confidence) * slopeDeviation();
    return new Interval(slope, slope - half, slope + half);
  }

  Interval at(double x0, double confidence) {
    double half = quantile(confidence) * deviationAt(x0);
    return new Interval(at(x0), at(x0) - half, at(x0) + half);
  }

  double quantile(double confidence) {
    return TDistribution.of(degreesOfFreedom()).inverseSurvivalProbability((1 - confidence) / 2);
  }

  /** x at which the band is nearest to leaving 0: where fit² − (t·s(x))² has its vertex. */
  double vertex(double confidence) {
    double t = quantile(confidence);
    double curve = slope * slope - t * t * slopeDeviation() * slopeDeviation();
    return curve == 0 ? meanX : meanX - meanY * slope / curve;
  }

  int points() {
    return x.length;
  }
}
