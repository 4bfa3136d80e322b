package org.chordlog.study;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * An estimate of a variance whose ratio to its expectation is χ²/ν: a mean square of an analysis of
 * variance, a squared range over d2* (fractional ν), or a figure known without scatter (infinite
 * ν). {@code source} names what varies; the value is in the square of the study's unit.
 */
public record MeanSquare(String source, double value, double degreesOfFreedom) {
  public MeanSquare {
    Check.text("source", source);
    Check.notNegative(source, value);
    if (!(degreesOfFreedom > 0)) {
      throw new BadInput("degreesOfFreedom", degreesOfFreedom, "are too few", "a number above 0");
    }
  }

  /** A sum of squares over its degrees of freedom. */
  static MeanSquare of(String source, double sumOfSquares, double degreesOfFreedom) {
    return new MeanSquare(source, sumOfSquares / degreesOfFreedom, degreesOfFreedom);
  }

  /** A variance that is stated, not estimated from readings. */
  static MeanSquare stated(String source, double variance) {
    return new MeanSquare(source, variance, Double.POSITIVE_INFINITY);
  }

  boolean exact() {
    return Double.isInfinite(degreesOfFreedom);
  }

  double sumOfSquares() {
    return value * degreesOfFreedom;
  }

  /** Both pooled into one, under the source given. */
  MeanSquare pooledWith(MeanSquare other, String pooledSource) {
    double degrees = degreesOfFreedom + other.degreesOfFreedom;
    return of(pooledSource, sumOfSquares() + other.sumOfSquares(), degrees);
  }
}
