package org.chordlog.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Specification;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineStream;
import org.chordlog.simulator.LineTruth;

/** Runs one strip of an invented line through tracker and evaluation. */
final class LineTrial {
  /** Free way before a piece. */
  static final double BEFORE_MM = 300;

  private static final double SCALE_SD_PERCENT = 0.1;
  private static final Specification LIMITS =
      new Specification(Face.OUTER, LineSetting.RADIUS_MM, 1788.0, 1812.0);

  private final LineSetting setting;
  private final LengthSource source;
  private final KnownLengths lengths;
  private double feedFactor = 1;

  LineTrial(LineSetting setting) {
    this(setting, LengthSource.CHANNEL, KnownLengths.NONE);
  }

  LineTrial(LineSetting setting, LengthSource source, KnownLengths lengths) {
    this.setting = setting;
    this.source = source;
    this.lengths = lengths;
  }

  /** By a stated feed that is wrong by that factor. */
  LineTrial withFeedFactor(double factor) {
    feedFactor = factor;
    return this;
  }

  /**
   * What was seen, what came out, and what was true, of the pieces of one strip; and the length at
   * which touch began.
   */
  record Seen(
      LineErrors errors,
      double startMm,
      List<PieceRun> runs,
      List<PieceOutcome> outcomes,
      List<LineTruth> truths) {
    /** Into a score, as one piece. */
    void into(LineScore score) {
      score.add(outcomes.get(0), truths.get(0), startMm, errors);
    }
  }

  Seen run(Random random) {
    LineErrors errors = setting.errors(random);
    double scale = SCALE_SD_PERCENT * random.nextGaussian();
    return run(errors, scale, random.nextLong());
  }

  Seen run(LineErrors errors, double scalePercent, long seed) {
    LineStream stream = new LineStream(setting.scenario(scalePercent), errors, seed);
    List<PieceRun> runs = new ArrayList<>();
    PieceTracker tracker = new PieceTracker(setting.track(source, lengths));
    List<LineTruth> truths = List.copyOf(stream.truths());
    double end =
        truths.get(truths.size() - 1).leftSeconds() + (BEFORE_MM - 50) / setting.feed() + 1;
    long[] lengthsNm = new long[1024];
    int n = 0;
    do {
      stream.next();
      long nanos = Math.round(stream.seconds() * 1e9);
      lengthsNm = n == lengthsNm.length ? Arrays.copyOf(lengthsNm, 2 * n) : lengthsNm;
      lengthsNm[n] = lengthNm(stream, nanos);
      tracker.offer(n, nanos, lengthsNm[n++], stream.depthNm(), runs::add);
    } while (stream.seconds() < end);
    PieceEvaluation evaluation =
        new PieceEvaluation(setting.evaluation(source, lengths, DecideBy.MEAN, LIMITS));
    double start = runs.isEmpty() ? 0 : lengthsNm[(int) runs.get(0).firstSequence()] / 1e6;
    return new Seen(errors, start, runs, runs.stream().map(evaluation::of).toList(), truths);
  }

  private long lengthNm(LineStream stream, long nanos) {
    return source == LengthSource.SPEED
        ? Math.round(nanos / 1e3 * setting.feed() * feedFactor - 1e6 * BEFORE_MM)
        : stream.lengthNm();
  }
}
