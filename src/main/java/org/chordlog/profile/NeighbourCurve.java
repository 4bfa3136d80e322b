package org.chordlog.profile;

import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealVector;

/**
 * What waves at the neighbouring frequencies, as a smooth curve of frequency: both divided by what
 * the bridge shows of them, a gamma regression with log link on a polynomial in log frequency
 * (iteratively reweighted least squares, McCullagh and Nelder 1989, ch. 8, from memory), since the
 * power of noise at one frequency is exponentially distributed.
 */
final class NeighbourCurve {
  private static final double FLOOR = 0.001;
  private static final double EULER = 0.577;
  private static final int ROUNDS = 8;
  private static final int MANY = 25;
  private static final double MOST_LOG = 80;

  private final double halfSpanMm;
  private final int count;
  private final int degree;
  private final double middle;
  private RealVector coefficients;

  NeighbourCurve(List<Harmonic.Line> neighbours, double halfSpanMm) {
    this.halfSpanMm = halfSpanMm;
    count = neighbours.size();
    degree = count < MANY ? 1 : 2;
    middle =
        neighbours.stream().mapToDouble(line -> StrictMath.log(line.perMm())).average().orElse(0);
    double[][] rows = neighbours.stream().map(line -> row(line.perMm())).toArray(double[][]::new);
    double[] powers =
        neighbours.stream()
            .mapToDouble(line -> Math.max(line.drop() / shown(line.perMm()), 1e-300))
            .toArray();
    coefficients = fit(rows, powers);
  }

  private static RealVector fit(double[][] rows, double[] powers) {
    Array2DRowRealMatrix matrix = new Array2DRowRealMatrix(rows);
    DecompositionSolver solver = new QRDecomposition(matrix).getSolver();
    RealVector target = new ArrayRealVector(powers).map(power -> StrictMath.log(power) + EULER);
    RealVector fitted = solver.solve(target);
    for (int round = 0; round < ROUNDS; round++) {
      RealVector line = matrix.operate(fitted);
      for (int i = 0; i < powers.length; i++) {
        double mean = exp(line.getEntry(i));
        target.setEntry(i, line.getEntry(i) + (powers[i] - mean) / mean);
      }
      fitted = solver.solve(target);
    }
    return fitted;
  }

  private static double exp(double log) {
    return StrictMath.exp(Math.max(-MOST_LOG, Math.min(MOST_LOG, log)));
  }

  private double[] row(double perMm) {
    double x = StrictMath.log(perMm) - middle;
    double[] row = new double[degree + 1];
    row[0] = 1;
    for (int i = 1; i <= degree; i++) {
      row[i] = row[i - 1] * x;
    }
    return row;
  }

  /** What noise alone would drop the sum of squares by at a frequency. */
  double powerAt(double perMm) {
    double log = coefficients.dotProduct(new ArrayRealVector(row(perMm), false));
    return exp(log) * shown(perMm);
  }

  /** Square of what the bridge shows, with a floor for what it does not make, such as vibration. */
  private double shown(double perMm) {
    double share = Transfer.share(halfSpanMm, 1 / perMm);
    return share * share + FLOOR;
  }

  /** Degrees of freedom of the curve. */
  double degrees() {
    return Math.max(2, 2.0 * count - 2.0 * (degree + 1));
  }
}
