package org.chordlog.radius;

import java.util.List;
import org.apache.commons.math3.fitting.leastsquares.MultivariateJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * depth = chord(1/R; span, foot radius) + zero offset, for each reading, with the covariance of the
 * depths: the zero is shared by all, the master and the indicator's error by the readings on one
 * master. A foot radius with a stated uncertainty is one more observation.
 */
final class MasterProblem {
  /** Above it the columns of two parameters are too alike to be told apart. */
  static final double MOST_CONDITION = 50;

  private final Bridge bridge;
  private final DepthSpread spread;
  private final List<MasterReading> readings;
  private final boolean footFitted;

  MasterProblem(
      Bridge bridge, Indicator indicator, @Nullable Zero zero, List<MasterReading> readings) {
    this.bridge = bridge;
    this.spread = DepthSpread.of(indicator, zero);
    this.readings = readings;
    footFitted = bridge.footRadiusUncertaintyMm() > 0;
  }

  /** The fit, with what was asked of it; {@code covariance} is 3×3, zeros where not fitted. */
  record Outcome(
      Bridge bridge, WeightedFit fit, boolean zeroFitted, boolean footFitted, int masters) {
    double span() {
      return fit.parameters().getEntry(0);
    }

    double zeroOffset() {
      return zeroFitted ? fit.parameters().getEntry(zeroColumn()) : 0;
    }

    double footRadius() {
      return footFitted ? fit.parameters().getEntry(1) : bridge.footRadiusMm();
    }

    RealMatrix covariance() {
      RealMatrix full = new Array2DRowRealMatrix(3, 3);
      int[] places = {0, zeroFitted ? zeroColumn() : -1, footFitted ? 1 : -1};
      for (int i = 0; i < 3; i++) {
        for (int j = 0; j < 3; j++) {
          boolean both = places[i] >= 0 && places[j] >= 0;
          full.setEntry(i, j, both ? fit.covariance().getEntry(places[i], places[j]) : 0);
        }
      }
      return full;
    }

    private int zeroColumn() {
      return footFitted ? 2 : 1;
    }
  }

  Outcome solve() {
    int masters = masters();
    if (masters >= 2) {
      Outcome withZero = outcome(true, masters);
      if (withZero.fit().condition() <= MOST_CONDITION) {
        return withZero;
      }
    }
    return outcome(false, masters);
  }

  /** The fit with the zero offset held at 0, however well the masters could tell it. */
  Outcome solveWithZeroHeld() {
    return outcome(false, masters());
  }

  private int masters() {
    return (int) readings.stream().map(r -> r.curvaturePerMm()).distinct().count();
  }

  private Outcome outcome(boolean zeroFitted, int masters) {
    double[] start = new double[1 + (footFitted ? 1 : 0) + (zeroFitted ? 1 : 0)];
    start[0] = bridge.spanMm();
    if (footFitted) {
      start[1] = bridge.footRadiusMm();
    }
    WeightedFit fit = WeightedFit.of(model(zeroFitted), observed(), covariance(), start);
    return new Outcome(bridge, fit, zeroFitted, footFitted, masters);
  }

  private double[] observed() {
    double[] observed = new double[readings.size() + (footFitted ? 1 : 0)];
    for (int i = 0; i < readings.size(); i++) {
      observed[i] = readings.get(i).depthMm();
    }
    if (footFitted) {
      observed[readings.size()] = bridge.footRadiusMm();
    }
    return observed;
  }

  private MultivariateJacobianFunction model(boolean zeroFitted) {
    return point -> value(point, zeroFitted);
  }

  private Pair<RealVector, RealMatrix> value(RealVector point, boolean zeroFitted) {
    int n = readings.size();
    int rows = n + (footFitted ? 1 : 0);
    RealVector depths = new ArrayRealVector(rows);
    RealMatrix jacobian = new Array2DRowRealMatrix(rows, point.getDimension());
    double span = point.getEntry(0);
    double foot = footFitted ? point.getEntry(1) : bridge.footRadiusMm();
    int zeroColumn = point.getDimension() - 1;
    for (int i = 0; i < n; i++) {
      double depth = Chord.depthMm(readings.get(i).curvaturePerMm(), span, foot);
      Slope slope = Slope.at(depth, span, foot);
      depths.setEntry(i, depth + (zeroFitted ? point.getEntry(zeroColumn) : 0));
      jacobian.setEntry(i, 0, -slope.bySpan() / slope.byDepth());
      if (footFitted) {
        jacobian.setEntry(i, 1, -slope.byFoot() / slope.byDepth());
      }
      if (zeroFitted) {
        jacobian.setEntry(i, zeroColumn, 1);
      }
    }
    if (footFitted) {
      depths.setEntry(n, foot);
      jacobian.setEntry(n, 1, 1);
    }
    return new Pair<>(depths, jacobian);
  }

  private RealMatrix covariance() {
    int n = readings.size();
    RealMatrix v = new Array2DRowRealMatrix(n + (footFitted ? 1 : 0), n + (footFitted ? 1 : 0));
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        v.setEntry(i, j, shared(readings.get(i), readings.get(j), i == j));
      }
    }
    if (footFitted) {
      double u = bridge.footRadiusUncertaintyMm();
      v.setEntry(n, n, u * u);
    }
    return v;
  }

  private double shared(MasterReading a, MasterReading b, boolean same) {
    double variance = spread.step() + spread.zero();
    if (a.master().equals(b.master())) {
      variance += spread.permissible() + part(a) * part(b);
    }
    double own = spread.step() + DepthSpread.ofMean(a.scatterNm(), a.sampleCount());
    return variance + (same ? own : 0);
  }

  private double part(MasterReading reading) {
    return reading.masterPartMm(bridge.spanMm(), bridge.footRadiusMm());
  }
}
