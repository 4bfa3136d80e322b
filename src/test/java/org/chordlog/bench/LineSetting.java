package org.chordlog.bench;

import java.util.List;
import java.util.Random;
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
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.TrackSettings;
import org.chordlog.radius.RadiusModel;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineScenario;
import org.chordlog.simulator.LineScenario.Encoder;
import org.chordlog.simulator.LineScenario.Feed;
import org.chordlog.simulator.LineScenario.Jog;
import org.chordlog.simulator.LineScenario.Line;
import org.chordlog.simulator.LineScenario.Range;
import org.chordlog.simulator.LineScenario.RunOut;
import org.chordlog.simulator.LineScenario.Seam;
import org.chordlog.simulator.LineScenario.Stock;
import org.chordlog.simulator.LineScenario.Stop;
import org.chordlog.simulator.LineScenario.Texture;
import org.chordlog.simulator.LineScenario.Vibration;
import org.chordlog.simulator.Scenario;

/**
 * An invented line for the bars: tube of 60.3 mm bent to 1,800 mm on its outer face; what is not
 * set is as usual. Errors of zero and span are drawn normally for each stream, with the standard
 * deviations that the set-up states. Immutable; each {@code with} gives another.
 */
record LineSetting(
    Gauge gauge,
    double feed,
    Stock stock,
    Texture texture,
    Moves moves,
    List<RunOut> rollers,
    Timing timing) {
  static final double RADIUS_MM = 1800;
  static final double DEPTH_SD_MM = 0.002;
  static final double SPAN_SD = 1e-4;
  private static final double STEP_MM = 0.001;

  /** Span, rate, and standard deviation of the vibration in micrometres. */
  record Gauge(double span, double rate, double vibrationUm) {}

  /** What else the feed does. */
  record Moves(
      int noseToTail,
      List<Stop> stops,
      List<Jog> jogs,
      List<Double> passShares,
      double feedSdPercent) {
    private static final double USUAL_SD_PERCENT = 1.7;
    static final Moves NONE = new Moves(1, List.of(), List.of(), List.of(1.0));

    Moves(int noseToTail, List<Stop> stops, List<Jog> jogs, List<Double> passShares) {
      this(noseToTail, stops, jogs, passShares, USUAL_SD_PERCENT);
    }
  }

  /** Of the encoder, ms. */
  record Timing(double delayMs, double jitterMs) {}

  static LineSetting of(double span, double rate, double feed, double pieceMm) {
    return new LineSetting(
        new Gauge(span, rate, 2),
        feed,
        new Stock(pieceMm, new Range(220, 340), new Range(20, 120), 0.4),
        new Texture(0.1, 150, 1, 3, List.of()),
        Moves.NONE,
        List.of(),
        new Timing(10, 5));
  }

  LineSetting with(Moves other) {
    return new LineSetting(gauge, feed, stock, texture, other, rollers, timing);
  }

  LineSetting with(List<RunOut> others) {
    return new LineSetting(gauge, feed, stock, texture, moves, others, timing);
  }

  LineSetting with(Timing other) {
    return new LineSetting(gauge, feed, stock, texture, moves, rollers, other);
  }

  LineSetting withStock(Stock other) {
    return new LineSetting(gauge, feed, other, texture, moves, rollers, timing);
  }

  LineSetting withWander(double percent) {
    Texture other = new Texture(percent, 150, texture.roughnessUm(), 3, texture.seams());
    return new LineSetting(gauge, feed, stock, other, moves, rollers, timing);
  }

  LineSetting withSeam(Seam seam) {
    Texture other = new Texture(texture.wanderPercent(), 150, 1, 3, List.of(seam));
    return new LineSetting(gauge, feed, stock, other, moves, rollers, timing);
  }

  LineSetting withVibration(double um, double roughnessUm) {
    Gauge other = new Gauge(gauge.span(), gauge.rate(), um);
    Texture rough = new Texture(texture.wanderPercent(), 150, roughnessUm, 3, texture.seams());
    return new LineSetting(other, feed, stock, rough, moves, rollers, timing);
  }

  LineScenario scenario(double scaleErrorPercent) {
    Scenario.Order order =
        new Scenario.Order(
            "bars", "hoop", "roller", tube(), Face.OUTER, Face.OUTER, RADIUS_MM, 12, List.of("-"));
    return new LineScenario(
        "bars",
        1,
        order,
        new Scenario.Foot("bridge", gauge.span(), SPAN_SD * gauge.span(), 0, 0, 0, null),
        new Scenario.Gauge(
            STEP_MM,
            permissibleMm(),
            gauge.span(),
            5,
            0,
            0.4,
            gauge.rate(),
            0,
            "two-value-mm-lines"),
        new Line(
            new Feed(
                feed,
                moves.feedSdPercent(),
                2 * LineTrial.BEFORE_MM,
                moves.noseToTail(),
                moves.stops(),
                moves.jogs(),
                moves.passShares()),
            stock,
            texture,
            new Vibration(12, 0.05, gauge.vibrationUm()),
            rollers,
            new Encoder(
                0.1, scaleErrorPercent, timing.delayMs(), timing.jitterMs(), 0, false, false)),
        List.of());
  }

  static Section.RoundTube tube() {
    return new Section.RoundTube(60.3, 3.2);
  }

  /** A permissible error that gives the whole depth the standard deviation above. */
  private static double permissibleMm() {
    return Math.sqrt(3 * (DEPTH_SD_MM * DEPTH_SD_MM - STEP_MM * STEP_MM / 6));
  }

  LineErrors errors(Random random) {
    return new LineErrors(DEPTH_SD_MM * random.nextGaussian(), 2 * SPAN_SD * random.nextGaussian());
  }

  RadiusModel model() {
    return RadiusModel.of(
        new SetUp(
            new Bridge(
                0,
                "bridge",
                new Bridge.Span(gauge.span(), SPAN_SD * gauge.span()),
                new Bridge.Feet(0, 0),
                0),
            new Indicator(STEP_MM, permissibleMm(), gauge.span()),
            null,
            null,
            tube(),
            Face.OUTER,
            Face.OUTER));
  }

  TrackSettings track(LengthSource source, KnownLengths lengths) {
    return new TrackSettings(
        new TrackSettings.Feed(source, false, 400),
        new TrackSettings.Gauge(
            false, null, Length.nm(STEP_MM), Length.nm(gauge.span()), gauge.span()),
        lengths);
  }

  EvaluationSettings evaluation(
      LengthSource source, KnownLengths lengths, DecideBy decideBy, Specification specification) {
    return new EvaluationSettings(model(), source, Face.OUTER, lengths, specification, decideBy);
  }
}
