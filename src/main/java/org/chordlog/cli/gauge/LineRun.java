package org.chordlog.cli.gauge;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.cli.common.LengthOptions;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.Length;
import org.chordlog.measure.Roller;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.profile.DelayFinder;
import org.chordlog.profile.EvaluationSettings;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.profile.RippleScan;
import org.chordlog.profile.RollerDrift;
import org.chordlog.profile.RollerPool;
import org.chordlog.profile.RollerSearch;
import org.chordlog.profile.RollerTrend;
import org.chordlog.profile.RollerVerdict;
import org.chordlog.profile.Shape;
import org.chordlog.profile.TrackSettings;
import org.chordlog.radius.RadiusModel;
import org.jspecify.annotations.Nullable;

/** Takes recorded rows through the same tracker and evaluation as a station does. */
final class LineRun {
  private static final long LEAST_FREE_NM = 500_000;

  private final LineRows rows;
  private final RadiusModel model;
  private final LineOptions options;
  private final LengthOptions lengths;
  private final EvaluationSettings settings;
  private final List<Roller> rollers;
  private final RollerPool pool = new RollerPool();
  private final RollerPool poolOfTwice = new RollerPool(RollerSearch.PROBABILITY_TWICE);
  private @Nullable RippleScan lastTwice;
  private final RollerDrift drift = new RollerDrift();

  /** A piece with what was made of it. */
  record Piece(
      PieceRun run, PieceOutcome outcome, @Nullable RollerVerdict rollers, @Nullable Shape shape) {}

  LineRun(
      LineRows rows,
      RadiusModel model,
      LineOptions options,
      LengthOptions lengths,
      Specification specification,
      DecideBy decideBy) {
    this.rows = rows;
    this.model = model;
    this.options = options;
    this.lengths = lengths;
    rollers = options.rollers(lengths);
    settings =
        new EvaluationSettings(
            model,
            rows.source(),
            options.lengthFace(model.setUp().measuredFace()),
            options.known(lengths),
            specification,
            decideBy);
  }

  List<Piece> pieces() {
    List<PieceRun> runs = new ArrayList<>();
    PieceTracker tracker = new PieceTracker(track(freeAirNm()));
    for (int row = 0; row < rows.size(); row++) {
      tracker.offer(
          rows.line(row), rows.nanos(row), rows.lengthNm(row), rows.depthNm(row), runs::add);
    }
    tracker.gap(runs::add);
    return runs.stream().map(this::piece).toList();
  }

  private Piece piece(PieceRun run) {
    PieceOutcome outcome = new PieceEvaluation(settings).of(run);
    if (!(outcome instanceof Measured measured)) {
      return new Piece(run, outcome, null, null);
    }
    Shape shape = Shape.of(run.profile(), run.part(), measured.result(), settings);
    if (rollers.isEmpty()) {
      return new Piece(run, outcome, null, shape);
    }
    RippleScan scan = RippleScan.of(run.profile(), measured.result(), settings, rollers);
    pool.add(scan);
    drift.add(scan.points());
    lastTwice = RippleScan.ofTwoWavesATurn(run.profile(), measured.result(), settings, rollers);
    poolOfTwice.add(lastTwice);
    return new Piece(run, outcome, RollerSearch.verdict(List.of(scan)), shape);
  }

  /** Of the newest pieces together, null before there are five; after {@link #pieces}. */
  @Nullable RollerVerdict pooled() {
    return pool.verdict();
  }

  /**
   * Two waves a turn, as a roller makes that is out of round: of the newest pieces together, of the
   * newest alone while there are fewer than five; null without any. After {@link #pieces}.
   */
  @Nullable RollerVerdict twice() {
    RollerVerdict pooled = poolOfTwice.verdict();
    return pooled != null || lastTwice == null
        ? pooled
        : RollerSearch.verdict(List.of(lastTwice), RollerSearch.PROBABILITY_TWICE);
  }

  /** The ripple of each roller from piece to piece; after {@link #pieces}. */
  List<RollerTrend> trends() {
    return drift.trends();
  }

  private TrackSettings track(@Nullable Long freeAirNm) {
    SetUp setUp = model.setUp();
    KnownLengths known = options.known(lengths);
    return new TrackSettings(
        new TrackSettings.Feed(rows.source(), options.bothWays, options.mostFeed(lengths)),
        new TrackSettings.Gauge(
            setUp.measuredFace() == Face.INNER,
            freeAirNm,
            Length.nm(setUp.indicator().resolutionMm()),
            Length.nm(setUp.indicator().travelMm()),
            model.spanMm()),
        known);
  }

  /** As given, else as the whole file tells it, so that its first piece is not lost. */
  private long freeAirNm() {
    if (options.freeAir != null) {
      return Length.nm(lengths.mm("--free-air", options.freeAir));
    }
    PieceTracker listener = new PieceTracker(track(null));
    long lowest = Long.MAX_VALUE;
    for (int row = 0; row < rows.size(); row++) {
      lowest = Math.min(lowest, rows.depthNm(row));
      listener.offer(row, rows.nanos(row), rows.lengthNm(row), rows.depthNm(row), run -> {});
    }
    Long learned = listener.freeAirNm();
    if (learned != null) {
      return learned;
    }
    if (lowest > -LEAST_FREE_NM) {
      throw new BadInput(
          "depth_mm",
          "the column",
          "never shows free air, 0.5 mm or more below the zero",
          "a file from before a piece to after it, or --free-air");
    }
    return lowest;
  }

  /** The delay of depths behind lengths, from one bent piece that was run forth and back. */
  DelayFinder.Delay delay() {
    DelayFinder finder = new DelayFinder(model.setUp().measuredFace() == Face.INNER);
    long free = freeAirNm();
    for (int row = 0; row < rows.size(); row++) {
      if (rows.depthNm(row) > free + LEAST_FREE_NM) {
        finder.offer(rows.nanos(row), rows.lengthNm(row), rows.depthNm(row));
      }
    }
    return finder.delay();
  }
}
