package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.util.Pair;
import org.junit.jupiter.api.Test;

/** The solver behind the calibration, on straight lines with published results. */
final class WeightedFitTest {
  private static MultivariateJacobianFunction line(double[] x) {
    return point -> {
      double[] y = new double[x.length];
      double[][] jacobian = new double[x.length][];
      for (int i = 0; i < x.length; i++) {
        y[i] = point.getEntry(0) + point.getEntry(1) * x[i];
        jacobian[i] = new double[] {1, x[i]};
      }
      return new Pair<>(new ArrayRealVector(y), new Array2DRowRealMatrix(jacobian));
    };
  }

  private static WeightedFit fit(double[] x, double[] y) {
    RealMatrix unit = MatrixUtils.createRealIdentityMatrix(x.length);
    return WeightedFit.of(line(x), y, unit, new double[] {0, 0});
  }

  /** NIST StRD, Norris (lower difficulty, linear), certified values read in Norris.dat. */
  @Test
  void norris() {
    double[] y = {
      0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1,
      668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0,
      998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2
    };
    double[] x = {
      0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5,
      666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2,
      999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5
    };
    WeightedFit fit = fit(x, y);
    double mse = fit.chiSquared() / fit.degreesOfFreedom();
    near(-0.262323073774029, fit.parameters().getEntry(0));
    near(1.00211681802045, fit.parameters().getEntry(1));
    near(0.232818234301152, Math.sqrt(mse * fit.covariance().getEntry(0, 0)));
    near(0.429796848199937E-03, Math.sqrt(mse * fit.covariance().getEntry(1, 1)));
    near(26.6173985294224, fit.chiSquared());
  }

  /**
   * GUM (JCGM 100:2008) H.3, calibration of a thermometer, data and results from memory: y1 -0.1712
   * (0.0029), y2 0.00218 (0.00067), r -0.930, s 0.0035 °C; at 30 °C -0.1494 (0.0041).
   */
  @Test
  void calibrationLineOfAThermometer() {
    double[] t = {
      21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511
    };
    double[] b = {
      -0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160
    };
    for (int i = 0; i < t.length; i++) {
      t[i] -= 20;
    }
    WeightedFit fit = fit(t, b);
    double s2 = fit.chiSquared() / fit.degreesOfFreedom();
    RealMatrix v = fit.covariance().scalarMultiply(s2);
    double u1 = Math.sqrt(v.getEntry(0, 0));
    double u2 = Math.sqrt(v.getEntry(1, 1));
    assertEquals(-0.1712, fit.parameters().getEntry(0), 5e-5);
    assertEquals(0.00218, fit.parameters().getEntry(1), 5e-6);
    assertEquals(0.0029, u1, 5e-5);
    assertEquals(0.00067, u2, 5e-6);
    assertEquals(-0.930, v.getEntry(0, 1) / (u1 * u2), 5e-4);
    assertEquals(0.0035, Math.sqrt(s2), 5e-5);
    assertEquals(-0.1494, fit.parameters().getEntry(0) + 10 * fit.parameters().getEntry(1), 1e-4);
    double at30 = v.getEntry(0, 0) + 100 * v.getEntry(1, 1) + 20 * v.getEntry(0, 1);
    assertEquals(0.0041, Math.sqrt(at30), 5e-5);
  }

  private static void near(double certified, double computed) {
    assertEquals(1, computed / certified, 1e-10);
  }
}
