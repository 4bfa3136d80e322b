package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;

/** What the list of jobs says of one. */
final class AttentionTest {
  private static final int STEADY_PIECES = 60;

  @Test
  void aJobIsNotInControlWhereAnyOfItsPositionsIsNot() {
    JobStatistics statistics =
        new JobStatistics(
            new StatisticsPlan(
                "radius",
                "mm",
                new Limits(1700.0, 1900.0, 1800.0),
                List.of("start", "end"),
                new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1),
                ChartSettings.usual()));
    feed(statistics, 1, STEADY_PIECES, 0);
    assertEquals(0, of(statistics).weight());
    feed(statistics, STEADY_PIECES + 1, STEADY_PIECES + 10, 30);
    Attention found = of(statistics);
    assertTrue(found.weight() > 0);
    assertTrue(found.words().get(0).startsWith("Not in control (end): "), found::toString);
  }

  private static Attention of(JobStatistics statistics) {
    return Attention.of(Some.job("hoops", "roller 1"), Optional.empty(), statistics);
  }

  /** Two readings a piece; the end is that much wider. */
  private static void feed(JobStatistics statistics, int from, int to, double widerMm) {
    for (int piece = from; piece <= to; piece++) {
      Well19937c random = new Well19937c(piece);
      for (String position : List.of("start", "end")) {
        long id = statistics.lastReadingId() + 1;
        double wider = position.equals("end") ? widerMm : 0;
        double value = 1800 + 2 * random.nextGaussian() + wider;
        statistics.add(new Observation(id, piece, position, id * 1_000_000L, value, 0.5));
      }
    }
  }
}
