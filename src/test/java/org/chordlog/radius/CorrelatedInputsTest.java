package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.stat.correlation.Covariance;
import org.junit.jupiter.api.Test;

/**
 * GUM (JCGM 100:2008) H.2, data read in a copy, results from memory: resistance, reactance and
 * impedance from correlated voltage, current and phase, by the covariance form that the calibration
 * uses for span, zero offset and foot radius.
 */
final class CorrelatedInputsTest {
  private static final double[][] DATA = {
    {5.007, 19.663e-3, 1.0456},
    {4.994, 19.639e-3, 1.0438},
    {5.005, 19.640e-3, 1.0468},
    {4.990, 19.685e-3, 1.0428},
    {4.999, 19.678e-3, 1.0433}
  };
  private static final double V = 4.9990;
  private static final double I = 19.6610e-3;
  private static final double PHI = 1.04446;

  private static double u(double byV, double byI, double byPhi) {
    double[][] c = new Covariance(DATA).getCovarianceMatrix().scalarMultiply(1 / 5.0).getData();
    EffectiveBridge inputs =
        new EffectiveBridge(
            V, I, PHI, c[0][0], c[1][1], c[2][2], c[0][1], c[0][2], c[1][2], 4, true);
    return Math.sqrt(inputs.variance(byV, byI, byPhi));
  }

  @Test
  void resistanceReactanceImpedance() {
    double z = V / I;
    double cos = Math.cos(PHI);
    double sin = Math.sin(PHI);
    assertEquals(127.732, z * cos, 5e-4);
    assertEquals(219.847, z * sin, 6e-4);
    assertEquals(254.260, z, 5e-4);
    assertEquals(0.071, u(cos / I, -z * cos / I, -z * sin), 5e-4);
    assertEquals(0.295, u(sin / I, -z * sin / I, z * cos), 1e-3);
    assertEquals(0.236, u(1 / I, -z / I, 0), 5e-4);
  }
}
