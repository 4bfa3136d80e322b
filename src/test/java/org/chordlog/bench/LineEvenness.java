package org.chordlog.bench;

import static org.chordlog.bench.LineMeans.text;

import java.util.List;
import java.util.Random;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.Uniformity;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;

/** Range and trend along pieces of steady jobs, and of jobs whose wander doubles; span 200. */
final class LineEvenness {
  private static final int STEADY = 40;
  private static final int AFTER = 15;
  private static final double WANDER_PERCENT = 0.1;
  private static final LineSetting USUAL =
      LineSetting.of(200, 20, 100, 3000).withWander(WANDER_PERCENT);

  private int jobs;
  private int rangeAlarms;
  private int trendAlarms;
  private int found;

  /** So many jobs, each looked at after its 40th piece and after 15 more of twice the wander. */
  void run(int count, long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < count; i++) {
      AlongStatistics job = new AlongStatistics();
      pieces(job, new LineTrial(USUAL), 1, STEADY, random);
      jobs++;
      rangeAlarms += job.control(AlongMeasure.RANGE).notInControl() ? 1 : 0;
      trendAlarms += job.control(AlongMeasure.TREND).notInControl() ? 1 : 0;
      LineTrial rougher = new LineTrial(USUAL.withWander(2 * WANDER_PERCENT));
      pieces(job, rougher, STEADY + 1, STEADY + AFTER, random);
      found += job.control(AlongMeasure.RANGE).notInControl() ? 1 : 0;
    }
  }

  private static void pieces(
      AlongStatistics job, LineTrial trial, int from, int to, Random random) {
    for (int piece = from; piece <= to; piece++) {
      if (trial.run(random).outcomes().get(0) instanceof Measured measured) {
        Uniformity even = measured.result().uniformity();
        job.add(
            new AlongStatistics.Piece(
                piece,
                piece,
                piece,
                even.rangePercent(),
                even.trendPercent(),
                even.trendUncertaintyPercent()));
      }
    }
  }

  private double most() {
    return 0.05 * jobs + 2 * Math.sqrt(0.05 * 0.95 * jobs);
  }

  List<Bar> bars() {
    return List.of(
        new Bar(
            "range and trend along steady pieces, looked at after 40: not in control",
            "at most 5 % each, and two standard errors",
            text(
                "range %d, trend %d of %d jobs (standard error %.1f %% at 5 %%)",
                rangeAlarms, trendAlarms, jobs, Math.sqrt(0.05 * 0.95 / jobs) * 100),
            rangeAlarms <= most() && trendAlarms <= most()),
        new Bar(
            "wander 0.2 % in place of 0.1 %: range not in control 15 pieces later",
            "at least 90 %", text("%d of %d jobs", found, jobs), found >= 0.9 * jobs));
  }
}
