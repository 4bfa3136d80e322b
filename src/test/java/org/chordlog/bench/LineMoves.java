package org.chordlog.bench;

import static org.chordlog.bench.LineMeans.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.PieceMark;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineScenario.Jog;
import org.chordlog.simulator.LineScenario.Seam;
import org.chordlog.simulator.LineScenario.Stop;

/** Stops, jogs, passes, joints, seams, stated feed: 3 m, span 200, 100 mm/s. */
final class LineMoves {
  private static final double PIECE_MM = 3000;
  private static final LineSetting USUAL = LineSetting.of(200, 100, 100, PIECE_MM);
  private final List<Bar> bars = new ArrayList<>();
  private final StringBuilder table = new StringBuilder(LineScore.head()).append('\n');

  List<Bar> bars() {
    return bars;
  }

  String table() {
    return table.toString();
  }

  /** The same piece with and without what the feed does. */
  void moves(int count, long seed) {
    moved(
        "2 stops",
        count,
        seed,
        random -> new LineSetting.Moves(1, stops(random), List.of(), once()));
    moved(
        "2 stops, 2 jogs back of 20 to 300 mm",
        count,
        seed,
        random -> new LineSetting.Moves(1, stops(random), jogs(random), once()));
    moved(
        "two passes, the first at 60 %",
        count, seed, random -> new LineSetting.Moves(1, List.of(), List.of(), List.of(0.6, 1.0)));
    moved(
        "two passes with stops and jogs",
        count,
        seed,
        random -> new LineSetting.Moves(1, stops(random), jogs(random), List.of(0.6, 1.0)));
  }

  private static List<Double> once() {
    return List.of(1.0);
  }

  private static List<Stop> stops(Random random) {
    return List.of(stop(random), stop(random));
  }

  private static Stop stop(Random random) {
    return new Stop(0, PIECE_MM * (0.1 + 0.8 * random.nextDouble()), 1 + 5 * random.nextDouble());
  }

  private static List<Jog> jogs(Random random) {
    return List.of(jog(random), jog(random));
  }

  private static Jog jog(Random random) {
    return new Jog(0, PIECE_MM * (0.3 + 0.6 * random.nextDouble()), 20 + 280 * random.nextDouble());
  }

  private interface Moving {
    LineSetting.Moves moves(Random random);
  }

  private void moved(String name, int count, long seed, Moving moving) {
    Random random = new Random(seed + name.hashCode());
    LineScore score = new LineScore();
    DescriptiveStatistics changes = new DescriptiveStatistics();
    for (int i = 0; i < count; i++) {
      LineErrors errors = USUAL.errors(random);
      long piece = random.nextLong();
      LineTrial.Seen plain = new LineTrial(USUAL).run(errors, 0, piece);
      LineTrial.Seen moved = new LineTrial(USUAL.with(moving.moves(random))).run(errors, 0, piece);
      moved.into(score);
      changes.addValue(change(plain, moved));
    }
    table.append(score.row(name)).append('\n');
    double mean = changes.getMean();
    double error = changes.getStandardDeviation() / Math.sqrt((double) changes.getN());
    bars.add(
        new Bar(
            name + ": the same " + count + " pieces with and without",
            "result within 1e-4",
            text(
                "%+.2f ± %.2f e-4 in the mean, sd %.2f; zones right %d",
                mean, error, changes.getStandardDeviation(), score.right),
            Math.abs(mean) < 1 && score.right == count));
  }

  /** Pairs nose to tail, with stops; and single pieces. */
  void joints(int count, long seed) {
    LineSetting setting = LineSetting.of(200, 20, 100, PIECE_MM);
    Random random = new Random(seed);
    int cut = 0;
    int whole = 0;
    DescriptiveStatistics places = new DescriptiveStatistics();
    for (int i = 0; i < count; i++) {
      List<Stop> stops = stops(random).subList(0, random.nextInt(3));
      LineTrial.Seen pair =
          new LineTrial(setting.with(new LineSetting.Moves(2, stops, List.of(), once())))
              .run(random);
      if (pair.outcomes().size() == 2) {
        cut++;
        places.addValue(pair.outcomes().get(0).part().toMm() + pair.startMm() - PIECE_MM);
      }
      LineTrial.Seen single =
          new LineTrial(setting.with(new LineSetting.Moves(1, stops, List.of(), once())))
              .run(random);
      whole += single.outcomes().size() == 1 ? 1 : 0;
    }
    bars.add(
        new Bar(
            "pieces nose to tail are cut",
            "at least 99 %",
            text(
                "%d of %d, place off by %+.1f mm, sd %.1f",
                cut, count, places.getMean(), places.getStandardDeviation()),
            cut >= 0.99 * count));
    bars.add(
        new Bar(
            "whole pieces are left whole",
            "at least 99.9 %",
            text("%d of %d", whole, count),
            whole >= 0.999 * count));
  }

  /** What the feed does not show by a stated speed; a seam; short pieces. */
  void others(int count, long seed) {
    statedFeed(count, seed);
    seam(count, seed);
    for (double length : new double[] {1000, 1200, 1500, 6000}) {
      score("piece of " + (int) length, LineSetting.of(200, 100, 100, length), count, seed);
    }
    score("delay 50 ms, jitter 16 ms", USUAL.with(new LineSetting.Timing(50, 16)), count, seed);
  }

  private LineScore score(String name, LineSetting setting, int count, long seed) {
    Random random = new Random(seed + name.hashCode());
    LineScore score = new LineScore();
    for (int i = 0; i < count; i++) {
      LineTrial.Seen seen = new LineTrial(setting).run(random);
      seen.into(score);
    }
    table.append(score.row(name)).append('\n');
    return score;
  }

  private void statedFeed(int count, long seed) {
    Random random = new Random(seed);
    LineScore score = new LineScore();
    int refused = 0;
    KnownLengths known = new KnownLengths(PIECE_MM, null, null, null, null);
    for (int i = 0; i < count; i++) {
      double factor = 0.97 + 0.06 * random.nextDouble();
      LineTrial.Seen seen =
          new LineTrial(steady(), LengthSource.SPEED, known).withFeedFactor(factor).run(random);
      score.add(scaled(seen, factor), seen.truths().get(0), 0, seen.errors());
      LineTrial.Seen stopped =
          new LineTrial(
                  USUAL.with(new LineSetting.Moves(1, stops(random), List.of(), once())),
                  LengthSource.SPEED,
                  known)
              .run(random);
      refused += stopped.outcomes().get(0) instanceof PieceOutcome.NotMeasured ? 1 : 0;
    }
    bars.add(
        new Bar(
            "a feed stated within ± 3 %, no stop",
            "no straight material in the mean (below 2e-4)",
            text("coverage %.1f %%, worst %.1e", score.coverage(), score.worstStraight),
            score.worstStraight < 2e-4));
    bars.add(
        new Bar(
            "the same with two stops",
            "refused, unless they are within 5 % of the piece",
            text("%d of %d refused", refused, count),
            refused >= 0.9 * count));
  }

  private static LineSetting steady() {
    return USUAL.with(new LineSetting.Moves(1, List.of(), List.of(), once(), 0));
  }

  /** Places by a wrong feed are off by its factor; the truth is asked at the true ones. */
  private static PieceOutcome scaled(LineTrial.Seen seen, double factor) {
    double start = (seen.startMm() + LineTrial.BEFORE_MM) / factor - LineTrial.BEFORE_MM;
    return LineScale.scaled(seen.outcomes().get(0), start, factor);
  }

  /** The same piece with and without it. */
  private void seam(int count, long seed) {
    Random random = new Random(seed);
    LineScore score = new LineScore();
    DescriptiveStatistics changes = new DescriptiveStatistics();
    int marked = 0;
    for (int i = 0; i < count; i++) {
      double at = PIECE_MM * (0.4 + 0.2 * random.nextDouble());
      LineErrors errors = USUAL.errors(random);
      long piece = random.nextLong();
      LineTrial.Seen plain = new LineTrial(USUAL).run(errors, 0, piece);
      LineTrial.Seen seen =
          new LineTrial(USUAL.withSeam(new Seam(at, 0.1, 10))).run(errors, 0, piece);
      seen.into(score);
      marked += marked(seen, at) ? 1 : 0;
      changes.addValue(change(plain, seen));
    }
    table.append(score.row("seam 0.1 mm high, 10 mm wide")).append('\n');
    double error = changes.getStandardDeviation() / Math.sqrt(count);
    bars.add(
        new Bar(
            "a seam of 0.1 × 10 mm: the same " + count + " pieces with and without",
            "recognised at its place; mean within 1e-4",
            text("%d recognised; %+.2f ± %.2f e-4 in the mean", marked, changes.getMean(), error),
            marked >= 0.95 * count && Math.abs(changes.getMean()) < 1));
  }

  private static boolean marked(LineTrial.Seen seen, double at) {
    return seen.outcomes().get(0) instanceof Measured measured
        && measured.result().marks().stream()
            .filter(mark -> mark.kind() == PieceMark.Kind.BUMP)
            .anyMatch(mark -> Math.abs(mark.placeMm() + seen.startMm() - at) < 15);
  }

  /** Of the mean, in 1e-4 of it; not a number where there is none. */
  private static double change(LineTrial.Seen before, LineTrial.Seen after) {
    return before.outcomes().get(0) instanceof Measured a
            && after.outcomes().get(0) instanceof Measured b
        ? 1e4 * (b.result().mean().bendPerMm() / a.result().mean().bendPerMm() - 1)
        : Double.NaN;
  }
}
