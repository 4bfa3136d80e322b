package org.chordlog.profile;

import java.util.List;

/**
 * What waves at the neighbouring frequencies, as a smooth curve of frequency: both divided by what
 * the bridge shows of them, a gamma regression with log link on a polynomial in log frequency
 * (iteratively reweighted least squares, McCullagh and Nelder 1989, from memory), since the power
 * of noise at one frequency is exponentially distributed. The polynomial is a sum of polynomials
 * that are orthogonal on the frequencies (G. E. Forsythe 1957).
 */
final class NeighbourCurve {
  private static final double FLOOR = 0.001;

  /** Mean of −ln of an exponential variable: Euler's constant. */
  private static final double EULER = 0.5772156649015329;

  private static final int ROUNDS = 8;
  private static final int MANY = 25;
  private static final double MOST_LOG = 80;

  /** An exponential variable is never so many times its mean: then it is a wave of something. */
  private static final double MOST_TIMES = 20;

  private final double halfSpanMm;
  private final int degree;
  private final double[] logs;
  private final double[] middles;
  private final double[] ratios;
  private final double[][] basis;
  private final double[] coefficients;

  NeighbourCurve(List<Harmonic.Line> neighbours, double halfSpanMm) {
    this.halfSpanMm = halfSpanMm;
    degree = neighbours.size() < MANY ? 1 : 2;
    logs = neighbours.stream().mapToDouble(line -> StrictMath.log(line.perMm())).toArray();
    middles = new double[degree + 1];
    ratios = new double[degree + 1];
    basis = new double[degree + 1][logs.length];
    coefficients = new double[degree + 1];
    orthogonal();
    double[] powers = new double[logs.length];
    for (int i = 0; i < powers.length; i++) {
      Harmonic.Line line = neighbours.get(i);
      powers[i] = Math.max(line.drop() / shown(line.perMm()), 1e-300);
    }
    fit(powers);
  }

  private void orthogonal() {
    double before = 1;
    for (int k = 0; k <= degree; k++) {
      double squares = 0;
      double moments = 0;
      for (int i = 0; i < logs.length; i++) {
        basis[k][i] = polynomial(logs[i], k);
        squares += basis[k][i] * basis[k][i];
        moments += basis[k][i] * basis[k][i] * logs[i];
      }
      middles[k] = moments / squares;
      ratios[k] = squares / before;
      before = squares;
    }
  }

  /** The k-th by recurrence: (x − α)·p less β times the one before. */
  private double polynomial(double x, int k) {
    double before = 0;
    double now = 1;
    for (int i = 0; i < k; i++) {
      double next = (x - middles[i]) * now - (i == 0 ? 0 : ratios[i] * before);
      before = now;
      now = next;
    }
    return now;
  }

  private void fit(double[] powers) {
    double[] target = new double[powers.length];
    for (int i = 0; i < powers.length; i++) {
      target[i] = StrictMath.log(powers[i]) + EULER;
    }
    leastSquares(target);
    for (int round = 0; round < ROUNDS; round++) {
      for (int i = 0; i < powers.length; i++) {
        double log = fitted(logs[i]);
        target[i] = log + Math.min(MOST_TIMES, powers[i] / exp(log)) - 1;
      }
      leastSquares(target);
    }
  }

  private void leastSquares(double[] target) {
    for (int k = 0; k <= degree; k++) {
      double products = 0;
      double squares = 0;
      for (int i = 0; i < target.length; i++) {
        products += basis[k][i] * target[i];
        squares += basis[k][i] * basis[k][i];
      }
      coefficients[k] = products / squares;
    }
  }

  private double fitted(double log) {
    double sum = 0;
    for (int k = 0; k <= degree; k++) {
      sum += coefficients[k] * polynomial(log, k);
    }
    return sum;
  }

  private static double exp(double log) {
    return StrictMath.exp(Math.max(-MOST_LOG, Math.min(MOST_LOG, log)));
  }

  /** What noise alone would drop the sum of squares by at a frequency. */
  double powerAt(double perMm) {
    return exp(fitted(StrictMath.log(perMm))) * shown(perMm);
  }

  /** Square of what the bridge shows, with a floor for what it does not make, such as vibration. */
  private double shown(double perMm) {
    double share = Transfer.share(halfSpanMm, 1 / perMm);
    return share * share + FLOOR;
  }

  /** Degrees of freedom of the curve. */
  double degrees() {
    return Math.max(2, 2.0 * logs.length - 2.0 * (degree + 1));
  }
}
