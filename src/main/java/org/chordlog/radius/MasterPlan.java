package org.chordlog.radius;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.apache.commons.math3.linear.RealMatrix;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/**
 * The standard uncertainty of a radius that sets of masters would give, from the covariance of
 * their fit alone: a master not yet read stands in with the depth that the fit predicts for it.
 */
final class MasterPlan {
  /** Preferred numbers, series R10 (ISO 3). */
  private static final double[] R10 = {1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8};

  /** Deeper than this share of the span a master hardly tells the span any more. */
  private static final double MOST_DEPTH = 0.25;

  /** Masters are thought of from tens of mm to ten metres. */
  private static final int[] DECADES = {10, 100, 1000};

  private final Bridge bridge;
  private final Indicator indicator;
  private final @Nullable Zero zero;
  private final Face face;
  private final double radiusMm;

  MasterPlan(Bridge bridge, Indicator indicator, @Nullable Zero zero, Face face, double radiusMm) {
    this.bridge = bridge;
    this.indicator = indicator;
    this.zero = zero;
    this.face = face;
    this.radiusMm = radiusMm;
  }

  /** What a fit gives; the correlation is that of span and zero, 0 where the zero is held. */
  record Fitted(
      double uncertaintyMm,
      double spanUncertaintyMm,
      boolean zeroFitted,
      int masters,
      double correlation) {}

  double statedMm() {
    double span = bridge.spanUncertaintyMm();
    double foot = bridge.footRadiusUncertaintyMm();
    Slope slope = slope(bridge.spanMm(), bridge.footRadiusMm());
    double variance =
        slope.bySpan() * slope.bySpan() * span * span
            + slope.byFoot() * slope.byFoot() * foot * foot;
    return told(slope, variance);
  }

  Fitted fitted(List<MasterReading> readings) {
    MasterProblem.Outcome outcome = problem(readings).solve();
    double scale = scale(outcome.fit());
    RealMatrix covariance = outcome.covariance().scalarMultiply(scale);
    double span = Math.sqrt(covariance.getEntry(0, 0));
    double zeroOffset = Math.sqrt(covariance.getEntry(1, 1));
    double correlation = zeroOffset == 0 ? 0 : covariance.getEntry(0, 1) / (span * zeroOffset);
    return new Fitted(
        uncertaintyMm(outcome, scale), span, outcome.zeroFitted(), outcome.masters(), correlation);
  }

  double zeroHeldMm(List<MasterReading> readings) {
    MasterProblem.Outcome outcome = problem(readings).solveWithZeroHeld();
    return uncertaintyMm(outcome, scale(outcome.fit()));
  }

  /** As {@link CalibrationFit} widens the covariance where the readings do not fit together. */
  private static double scale(WeightedFit fit) {
    return fit.probability() >= CalibrationFit.LEAST_PROBABILITY
        ? 1
        : fit.chiSquared() / fit.degreesOfFreedom();
  }

  private MasterProblem problem(List<MasterReading> readings) {
    return new MasterProblem(bridge, indicator, zero, readings);
  }

  private double uncertaintyMm(MasterProblem.Outcome outcome, double scale) {
    Slope slope = slope(outcome.span(), outcome.footRadius());
    double[] by = {slope.bySpan(), -slope.byDepth(), slope.byFoot()};
    RealMatrix covariance = outcome.covariance();
    double foot = outcome.footFitted() ? 0 : bridge.footRadiusUncertaintyMm();
    double variance = slope.byFoot() * slope.byFoot() * foot * foot;
    for (int i = 0; i < by.length; i++) {
      for (int j = 0; j < by.length; j++) {
        variance += scale * by[i] * by[j] * covariance.getEntry(i, j);
      }
    }
    return told(slope, Math.max(0, variance));
  }

  /** With the depth's own uncertainty, in mm of radius. */
  private double told(Slope slope, double variance) {
    double depth = DepthSpread.of(indicator, zero).fixed();
    return radiusMm * radiusMm * Math.sqrt(variance + slope.byDepth() * slope.byDepth() * depth);
  }

  private Slope slope(double spanMm, double footRadiusMm) {
    double depth = Chord.depthMm(Faces.sign(face) / radiusMm, spanMm, footRadiusMm);
    return Slope.at(depth, spanMm, footRadiusMm);
  }

  /** The addition that lowers the uncertainty most; null where no master can be reached. */
  CalibrationAdvice.@Nullable Addition best(List<MasterReading> readings) {
    MasterProblem.Outcome outcome = problem(readings).solve();
    List<CalibrationAdvice.Addition> additions = new ArrayList<>();
    for (Face side : List.of(Face.OUTER, Face.INNER)) {
      for (int decade : DECADES) {
        for (double step : R10) {
          add(additions, readings, outcome, side, decade * step);
        }
      }
    }
    return additions.stream()
        .min(Comparator.comparingDouble(CalibrationAdvice.Addition::fittedMm))
        .orElse(null);
  }

  private void add(
      List<CalibrationAdvice.Addition> additions,
      List<MasterReading> readings,
      MasterProblem.Outcome outcome,
      Face side,
      double masterRadiusMm) {
    MasterReading imagined = imagined(readings, outcome, side, masterRadiusMm);
    if (imagined != null) {
      List<MasterReading> more = new ArrayList<>(readings);
      more.add(imagined);
      double after = uncertaintyMm(problem(more).solve(), scale(outcome.fit()));
      additions.add(new CalibrationAdvice.Addition(side, masterRadiusMm, after));
    }
  }

  /** Null where the feet or the travel do not reach, or such a master is there already. */
  private @Nullable MasterReading imagined(
      List<MasterReading> readings, MasterProblem.Outcome outcome, Face side, double radius) {
    double curvature = Faces.sign(side) / radius;
    double depth = depthOrNaN(curvature, outcome.span(), outcome.footRadius());
    boolean there =
        readings.stream().anyMatch(r -> Math.abs(r.curvaturePerMm() / curvature - 1) < 0.02);
    double most = Math.min(indicator.travelMm(), MOST_DEPTH * outcome.span());
    if (there || !(Math.abs(depth) <= most)) {
      return null;
    }
    MasterReading like = readings.get(0);
    double relative =
        readings.stream()
            .mapToDouble(r -> r.master().expandedUncertaintyMm() / r.master().radiusMm())
            .min()
            .orElse(0);
    Master master = new Master(0, "imagined", side, radius, relative * radius);
    long depthNm = Length.nm(depth + outcome.zeroOffset());
    boolean fits = side == Face.OUTER == depthNm > 0 && depthNm != 0;
    return fits ? new MasterReading(master, depthNm, like.scatterNm(), like.sampleCount()) : null;
  }

  private static double depthOrNaN(double curvature, double spanMm, double footRadiusMm) {
    try {
      return Chord.depthMm(curvature, spanMm, footRadiusMm);
    } catch (BadInput tooTight) {
      return Double.NaN;
    }
  }
}
