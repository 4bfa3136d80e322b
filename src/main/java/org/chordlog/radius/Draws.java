package org.chordlog.radius;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RectangularCholeskyDecomposition;
import org.apache.commons.math3.random.RandomGenerator;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.SetUp;

/**
 * One draw of all inputs of a reading: rectangular for the steps, the permissible error and the
 * skew angle, t for scatters (JCGM 101:2008, 6.4.9), jointly normal for span, zero offset and foot
 * radius, or t where the calibration has finite degrees of freedom.
 */
final class Draws {
  private final RandomGenerator random;
  private final EffectiveBridge bridge;
  private final RealMatrix root;
  private final double step;
  private final double permissible;
  private final double skewRadians;
  private final Scatter reading;
  private final Scatter zero;
  private final Scatter joint;
  private double depthMm;
  private double spanMm;
  private double footRadiusMm;
  private double tangent;

  Draws(RadiusModel model, long scatterNm, int sampleCount, RandomGenerator random) {
    this.random = random;
    bridge = model.bridge();
    root = root(bridge);
    SetUp setUp = model.setUp();
    Indicator indicator = setUp.indicator();
    step = indicator.resolutionMm() / 2;
    permissible = indicator.permissibleErrorMm();
    skewRadians = StrictMath.toRadians(setUp.bridge().skewLimitDegrees());
    reading = scatter(DepthSpread.ofMean(scatterNm, sampleCount), sampleCount - 1.0);
    zero = scatter(model.spread().zero(), model.spread().zeroDegrees());
    joint = scatter(1, bridge.degreesOfFreedom());
  }

  void next() {
    double[] shift = joint();
    spanMm = bridge.spanMm() + shift[0];
    footRadiusMm = bridge.footRadiusMm() + shift[2];
    depthMm =
        rectangular(step)
            + rectangular(step)
            + rectangular(permissible)
            + zero.next()
            + reading.next()
            - shift[1];
    tangent = StrictMath.tan(rectangular(skewRadians));
  }

  double depthMm() {
    return depthMm;
  }

  double spanMm() {
    return spanMm;
  }

  double footRadiusMm() {
    return footRadiusMm;
  }

  double tangent() {
    return tangent;
  }

  private double rectangular(double half) {
    return half * (2 * random.nextDouble() - 1);
  }

  private Scatter scatter(double variance, double degrees) {
    return Scatter.of(random, Math.sqrt(variance), degrees);
  }

  private double[] joint() {
    double[] normal = new double[root.getColumnDimension()];
    double stretch = joint.stretch();
    for (int i = 0; i < normal.length; i++) {
      normal[i] = stretch * random.nextGaussian();
    }
    return root.operate(normal);
  }

  /** Works for a variance of zero too. */
  private static RealMatrix root(EffectiveBridge b) {
    double[][] covariance = {
      {b.ss(), b.sz(), b.sr()}, {b.sz(), b.zz(), b.zr()}, {b.sr(), b.zr(), b.rr()}
    };
    double largest = Math.max(b.ss(), Math.max(b.zz(), b.rr()));
    if (largest == 0) {
      return new Array2DRowRealMatrix(3, 1);
    }
    double least = largest * 1e-14;
    return new RectangularCholeskyDecomposition(new Array2DRowRealMatrix(covariance), least)
        .getRootMatrix();
  }
}
