package org.chordlog.bench;

import static org.chordlog.bench.LineMeans.text;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.profile.PieceEvaluation;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceRun;
import org.chordlog.profile.PieceTracker;
import org.chordlog.profile.Profile;
import org.chordlog.profile.RippleScan;
import org.chordlog.profile.RollerSearch;
import org.chordlog.simulator.LineStream;

/**
 * What a value and a piece cost, how many bytes a stored profile has, and whether it gives the same
 * digits.
 */
final class LineCosts {
  private static final int STATIONS = 64;

  private LineCosts() {}

  /** Values of a stream, made beforehand so that making them costs nothing. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  private record Values(long[] nanos, long[] lengthsNm, long[] depthsNm) {}

  private static Values values(LineSetting setting, int count, long seed) {
    LineStream stream = new LineStream(setting.scenario(0), setting.errors(new Random(seed)), seed);
    long[][] values = new long[3][count];
    for (int i = 0; i < count; i++) {
      stream.next();
      values[0][i] = Math.round(stream.seconds() * 1e9);
      values[1][i] = stream.lengthNm();
      values[2][i] = stream.depthNm();
    }
    return new Values(values[0], values[1], values[2]);
  }

  static List<Bar> bars(int values) {
    LineSetting fast = LineSetting.of(200, 1000, 100, 3000);
    Values stream = values(fast, values, 5);
    List<PieceRun> runs = new ArrayList<>();
    double[] nanos = new double[5];
    for (int round = 0; round < nanos.length; round++) {
      runs.clear();
      long start = System.nanoTime();
      track(fast, stream, runs);
      nanos[round] = (System.nanoTime() - start) / (double) values;
    }
    Arrays.sort(nanos);
    double each = nanos[nanos.length / 2];
    List<Bar> bars = new ArrayList<>();
    bars.add(
        new Bar(
            "a value, tracked and sorted into its bin",
            "below 1 µs; one station at 1,000/s below 2 % of a core; 64 at 500/s below 1 core",
            text(
                "%.0f ns (%d values); %.3f %%; %.4f cores",
                each, values, each * 1000 / 1e7, each * 500 * STATIONS / 1e9),
            each < 1000));
    bars.add(evaluated(fast, runs));
    bars.addAll(kept(0.5, 2, 8));
    return bars;
  }

  private static void track(LineSetting setting, Values values, List<PieceRun> runs) {
    PieceTracker tracker = new PieceTracker(setting.track(LengthSource.CHANNEL, KnownLengths.NONE));
    for (int i = 0; i < values.nanos().length; i++) {
      tracker.offer(i, values.nanos()[i], values.lengthsNm()[i], values.depthsNm()[i], runs::add);
    }
  }

  private static Bar evaluated(LineSetting setting, List<PieceRun> runs) {
    var settings = setting.evaluation(LengthSource.CHANNEL, KnownLengths.NONE, DecideBy.MEAN, null);
    PieceEvaluation evaluation = new PieceEvaluation(settings);
    DescriptiveStatistics took = new DescriptiveStatistics();
    for (int round = 0; round < 10; round++) {
      for (PieceRun run : runs) {
        long start = System.nanoTime();
        if (evaluation.of(run) instanceof Measured measured) {
          RollerSearch.verdict(
              List.of(
                  RippleScan.of(run.profile(), measured.result(), settings, RippleTrial.ROLLERS)));
        }
        took.addValue((System.nanoTime() - start) / 1e6);
      }
    }
    return new Bar(
        "a piece of 3 m evaluated, rollers compared",
        "below 5 ms",
        text("median %.2f ms (%d times)", took.getPercentile(50), took.getN()),
        took.getN() > 0 && took.getPercentile(50) < 5);
  }

  /** Bytes a bin, and that profile and reading come back to the last bit. */
  static List<Bar> kept(double... noises) {
    double most = 0;
    int profiles = 0;
    int same = 0;
    Random random = new Random(3);
    for (double span : LineMeans.SPANS) {
      for (double rate : LineMeans.RATES) {
        for (double noise : noises) {
          LineSetting setting =
              LineSetting.of(span, rate, 100, 6000).withVibration(noise, noise / 2);
          LineTrial.Seen seen = new LineTrial(setting).run(random);
          Profile profile = seen.runs().get(0).profile();
          byte[] packed = profile.packed();
          most = Math.max(most, (double) packed.length / profile.bins());
          profiles++;
          Profile back = Profile.unpacked(packed);
          PieceEvaluation evaluation =
              new PieceEvaluation(
                  setting.evaluation(LengthSource.CHANNEL, KnownLengths.NONE, DecideBy.MEAN, null));
          boolean equal =
              back.equals(profile)
                  && evaluation
                      .of(back, seen.runs().get(0).part())
                      .equals(evaluation.of(profile, seen.runs().get(0).part()));
          same += equal ? 1 : 0;
        }
      }
    }
    return List.of(
        new Bar(
            "bytes a bin of a kept profile, 6 m, all spans and rates, noise up to 8 µm",
            "at most 3",
            text("at most %.2f (%d profiles)", most, profiles),
            most <= 3),
        new Bar(
            "profile and reading from what was kept",
            "bit for bit",
            text("%d of %d", same, profiles),
            same == profiles));
  }
}
