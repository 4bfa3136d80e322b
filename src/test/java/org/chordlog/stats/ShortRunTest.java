package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.ShortRun.Basis;
import org.chordlog.stats.ShortRun.Part;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.junit.jupiter.api.Test;

/** Eight jobs of five pieces, each at its own radius and tolerance; simulated. */
final class ShortRunTest {
  private static final int JOBS = 8;
  private static final int PIECES = 5;
  private static final int CHANGED = 5;
  private static final ChartSettings SETTINGS =
      ChartSettings.usual().withRunRules(ShortRun.RULES).withBaselinePoints(CHANGED * PIECES);

  /** Whether any chart of each job, and whether the pooled chart, signals from the shift on. */
  private record Found(boolean separate, boolean pooled) {}

  private static Found simulate(int seed, double shift) {
    Well19937c random = new Well19937c(seed);
    ShortRun machine = new ShortRun(Basis.STANDARDISED, "mm", SETTINGS);
    boolean separate = false;
    long id = 0;
    for (int number = 0; number < JOBS; number++) {
      Part part = new Part(600 + 250.0 * number, 1 + 0.4 * number);
      JobStatistics own = new JobStatistics(Data.plan(1, Limits.NONE, ChartSettings.usual()));
      for (int piece = 1; piece <= PIECES; piece++) {
        double z = random.nextGaussian() + (number >= CHANGED ? shift : 0);
        double radius = part.nominal() + part.sigma() * z;
        Observation seen = new Observation(++id, piece, "middle", id, radius, 0);
        own.add(seen);
        machine.add(seen, part);
      }
      separate |= number >= CHANGED && signals(Data.chart(own, ChartKind.INDIVIDUALS), 0);
    }
    ChartSnapshot pooled =
        machine.statistics().chart(ShortRun.CHARACTERISTIC, ChartKind.INDIVIDUALS);
    return new Found(separate, signals(pooled, CHANGED * PIECES));
  }

  private static boolean signals(ChartSnapshot chart, long after) {
    return chart.points().stream()
        .anyMatch(point -> point.number() > after && !point.signals().isEmpty());
  }

  @Test
  void pooledChartFindsAShiftThatSeparateChartsMiss() {
    assertEquals(new Found(false, true), simulate(1, 1.5));
  }

  /** Over 400 machines: a shift of 1.5 sigma, and none. */
  @Test
  void pooledChartFindsFarMoreThanSeparateOnes() {
    int[] found = count(1.5);
    assertTrue(found[0] < 0.15 * 400, "separate " + found[0]);
    assertTrue(found[1] > 0.8 * 400, "pooled " + found[1]);
    assertTrue(count(0)[1] < 0.2 * 400, "pooled, no shift " + count(0)[1]);
  }

  static int[] count(double shift) {
    int[] found = new int[2];
    for (int seed = 1; seed <= 400; seed++) {
      Found one = simulate(seed, shift);
      found[0] += one.separate() ? 1 : 0;
      found[1] += one.pooled() ? 1 : 0;
    }
    return found;
  }

  @Test
  void deviationKeepsTheUnit() {
    ShortRun machine = new ShortRun(Basis.DEVIATION, "mm", SETTINGS);
    Part part = Part.of(new Limits(994.0, 1006.0, 1000.0));
    assertEquals(2, part.sigma());
    machine.add(new Observation(1, 1, "start", 1, 1003, 0.1), part);
    ChartSnapshot chart =
        machine.statistics().chart(ShortRun.CHARACTERISTIC, ChartKind.INDIVIDUALS);
    assertEquals(3, chart.points().get(0).value());
    assertEquals("mm", chart.unit());
    assertThrows(BadInput.class, () -> Part.of(Limits.NONE));
  }
}
