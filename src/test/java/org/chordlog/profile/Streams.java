package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.Length;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.radius.Chord;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/**
 * Streams of invented pieces past a bridge, built by hand; noise of less than a step keeps the
 * value from standing still.
 */
final class Streams {
  static final double SPAN = 200;
  static final double FREE_MM = -5;
  static final double RADIUS = 1800;
  private static final Section.RoundTube TUBE = new Section.RoundTube(60.3, 3.2);

  final PieceTracker tracker;
  final List<PieceRun> runs = new ArrayList<>();
  long sequence;
  double seconds;
  double placeMm = -100;
  double lengthOffsetMm;
  double lengthSign = 1;
  double rate = 50;
  private DoubleUnaryOperator depthMm = place -> FREE_MM;

  Streams(TrackSettings settings) {
    tracker = new PieceTracker(settings);
  }

  static Streams usual() {
    return new Streams(track(LengthSource.CHANNEL, KnownLengths.NONE));
  }

  static TrackSettings track(LengthSource source, KnownLengths lengths) {
    return new TrackSettings(
        new TrackSettings.Feed(source, false, 400),
        new TrackSettings.Gauge(false, null, 1000, Length.nm(12.5), SPAN),
        lengths);
  }

  static SetUp setUp(Face measured) {
    return new SetUp(
        new Bridge(0, "bridge", new Bridge.Span(SPAN, 0.02), new Bridge.Feet(0, 0), 0),
        new Indicator(0.001, 0.003, 12.5),
        null,
        null,
        TUBE,
        measured,
        measured);
  }

  static RadiusModel model() {
    return RadiusModel.of(setUp(Face.OUTER));
  }

  static EvaluationSettings settings(LengthSource source, KnownLengths lengths) {
    return settings(source, lengths, null, DecideBy.MEAN);
  }

  static EvaluationSettings settings(
      LengthSource source,
      KnownLengths lengths,
      @Nullable Specification specification,
      DecideBy decideBy) {
    return new EvaluationSettings(model(), source, Face.OUTER, lengths, specification, decideBy);
  }

  static EvaluationSettings usualSettings() {
    return settings(LengthSource.CHANNEL, KnownLengths.NONE);
  }

  /** A piece that is straight at both ends and bent to the radius in between. */
  static DoubleUnaryOperator bent(double length, double lead, double rise, double radius) {
    return s -> ramp((s - lead) / rise + 0.5) * ramp((length - lead - s) / rise + 0.5) / radius;
  }

  private static double ramp(double x) {
    return Math.max(0, Math.min(1, x));
  }

  /** Depth of the bridge over a piece of that curvature, by summing the triangle each mm. */
  Streams piece(double length, DoubleUnaryOperator curvature) {
    depthMm = place -> depthMm(place, length, curvature);
    return this;
  }

  private static double depthMm(double place, double length, DoubleUnaryOperator curvature) {
    double standing = Math.min(place, length - place) / (SPAN / 2);
    if (standing < 0) {
      return FREE_MM;
    }
    double at = Math.max(SPAN / 2, Math.min(length - SPAN / 2, place));
    double sum = 0;
    int half = (int) (SPAN / 2);
    for (int j = -half; j <= half; j++) {
      sum += (half - Math.abs(j)) * curvature.applyAsDouble(at + j);
    }
    double chord = Chord.depthMm(sum / half / half, SPAN, 0);
    return FREE_MM + (chord - FREE_MM) * Math.sqrt(Math.min(1, standing));
  }

  /** Depths that a function of the place gives, where the piece does not matter. */
  Streams depths(DoubleUnaryOperator depth) {
    depthMm = depth;
    return this;
  }

  double depthAt(double place) {
    return depthMm.applyAsDouble(place);
  }

  Streams go(double toMm, double mmPerSecond) {
    double step = Math.copySign(mmPerSecond / rate, toMm - placeMm);
    while ((toMm - placeMm) * step > 0) {
      placeMm += Math.abs(toMm - placeMm) < Math.abs(step) ? toMm - placeMm : step;
      value();
    }
    return this;
  }

  Streams rest(double forSeconds) {
    for (int i = 0; i < forSeconds * rate; i++) {
      value();
    }
    return this;
  }

  /** Time and place go on, and nothing is told. */
  Streams skip(double mm, double mmPerSecond) {
    placeMm += mm;
    seconds += Math.abs(mm) / mmPerSecond;
    return this;
  }

  private void value() {
    seconds += 1 / rate;
    value(depthMm.applyAsDouble(placeMm) + 0.0006 * Math.sin(2.4 * sequence));
  }

  void value(double depth) {
    tracker.offer(
        ++sequence,
        Math.round(seconds * 1e9),
        Length.nm(lengthSign * placeMm + lengthOffsetMm),
        Length.nm(Math.rint(depth * 1000) / 1000),
        runs::add);
  }

  PieceRun only() {
    if (runs.size() != 1) {
      throw new AssertionError(runs.toString());
    }
    return runs.get(0);
  }

  static PieceResult measured(PieceOutcome outcome) {
    if (outcome instanceof PieceOutcome.Measured measured) {
      return measured.result();
    }
    throw new AssertionError(outcome.toString());
  }

  static Refused refused(PieceOutcome outcome) {
    if (outcome instanceof PieceOutcome.NotMeasured not) {
      return not.why();
    }
    throw new AssertionError(outcome.toString());
  }

  static PieceOutcome evaluated(PieceRun run) {
    return new PieceEvaluation(usualSettings()).of(run);
  }
}
