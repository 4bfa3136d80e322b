package org.chordlog.radius;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer.Optimum;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.apache.commons.math3.util.Pair;

/**
 * Generalised least squares for observations with a known covariance: parameters, their covariance,
 * residuals, χ² and the condition number of the column-normalised Jacobian.
 */
record WeightedFit(
    RealVector parameters,
    RealMatrix covariance,
    RealVector residuals,
    double chiSquared,
    int degreesOfFreedom,
    double condition) {
  private static final double SAME = 1e-14;

  /** Observations are whitened with the Cholesky factor of their covariance. */
  static WeightedFit of(
      MultivariateJacobianFunction model,
      double[] observed,
      RealMatrix covariance,
      double[] start) {
    RealMatrix whitener =
        new LUDecomposition(new CholeskyDecomposition(covariance, SAME, 0).getL())
            .getSolver()
            .getInverse();
    Optimum best =
        new LevenbergMarquardtOptimizer()
            .optimize(
                new LeastSquaresBuilder()
                    .model(point -> white(whitener, model.value(point)))
                    .target(whitener.operate(observed))
                    .start(start)
                    .maxEvaluations(1000)
                    .maxIterations(1000)
                    .build());
    return of(best, model, observed);
  }

  private static WeightedFit of(
      Optimum best, MultivariateJacobianFunction model, double[] observed) {
    RealMatrix r = new QRDecomposition(best.getJacobian()).getR();
    int n = best.getPoint().getDimension();
    RealMatrix inverse =
        new QRDecomposition(r.getSubMatrix(0, n - 1, 0, n - 1)).getSolver().getInverse();
    RealVector computed = model.value(best.getPoint()).getFirst();
    return new WeightedFit(
        best.getPoint(),
        inverse.multiply(inverse.transpose()),
        new ArrayRealVector(observed).subtract(computed),
        best.getCost() * best.getCost(),
        observed.length - n,
        condition(best.getJacobian()));
  }

  /** Probability of a χ² this large or larger when the model and the uncertainties hold. */
  double probability() {
    return degreesOfFreedom == 0
        ? 1
        : 1 - new ChiSquaredDistribution(null, degreesOfFreedom).cumulativeProbability(chiSquared);
  }

  private static Pair<RealVector, RealMatrix> white(
      RealMatrix whitener, Pair<RealVector, RealMatrix> value) {
    return new Pair<>(whitener.operate(value.getFirst()), whitener.multiply(value.getSecond()));
  }

  private static double condition(RealMatrix jacobian) {
    RealMatrix scaled = jacobian.copy();
    for (int j = 0; j < scaled.getColumnDimension(); j++) {
      RealVector column = scaled.getColumnVector(j);
      scaled.setColumnVector(j, column.mapDivide(Math.max(column.getNorm(), Double.MIN_NORMAL)));
    }
    return new SingularValueDecomposition(scaled).getConditionNumber();
  }
}
