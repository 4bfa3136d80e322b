package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.RunTest;
import org.junit.jupiter.api.Test;

/** EWMA and cusum of published examples. */
final class TextbookSumsTest {
  private static final ChartSettings OPEN =
      ChartSettings.usual().withBaselinePoints(0).withRunRules(RunRules.only(RunTest.BEYOND_LIMIT));

  /** e-Handbook 6.3.2.4 (from memory): EWMA₀ = 50, s = 2.0539, λ = 0.3, asymptotic limits. */
  @Test
  void ewmaOfTheHandbook() {
    double[] x = {
      52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8,
      51.2, 52.6, 52.4, 53.6, 52.1
    };
    double[] published = {
      50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52,
      50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99
    };
    ChartSettings settings =
        OPEN.withStandard(new ChartSettings.Standard(50, 2.0539))
            .withEwma(new ChartSettings.Ewma(0.3, 3, true));
    JobStatistics job = Data.fed(Data.plan(1, Limits.NONE, settings), x);
    ChartSnapshot chart = Data.chart(job, ChartKind.EWMA);
    for (int i = 0; i < x.length; i++) {
      assertEquals(published[i], chart.points().get(i).value(), 5.1e-3, "point " + (i + 1));
    }
    double[] limits = Data.limits(job, ChartKind.EWMA);
    assertEquals(52.5884, limits[2], 1e-4);
    assertEquals(47.4115, limits[0], 1e-4, "the printed limit is truncated");
  }

  /** e-Handbook 6.3.2.3 (from memory): group means, target 325, k = 0.3175, h = 4.1959. */
  @Test
  void cusumOfTheHandbook() {
    double[] x = {
      324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
      324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
    };
    double[] above = {
      0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.00, 19.04
    };
    double[] below = {
      0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.26, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0
    };
    ChartSnapshot chart = cusum(x, 325, 1, 0.3175, 4.1959);
    for (int i = 0; i < x.length; i++) {
      ChartPoint point = chart.points().get(i);
      assertEquals(above[i], point.value(), 5.1e-3, "point " + (i + 1));
      assertEquals(-below[i], Data.lower(point), 5.1e-3, "point " + (i + 1));
    }
    assertEquals(14, Data.firstSignal(chart));
  }

  /** Devore, Example 16.9 (recursion printed; sums recomputed): μ₀ = 40, k = 0.15. */
  @Test
  void cusumOfDevore() {
    double[] x = {
      40.20, 39.72, 40.42, 39.98, 40.06, 39.76, 39.65, 40.41, 40.32, 39.84, 40.49, 40.40, 40.61,
      39.98, 40.23, 40.34
    };
    double[] d = {
      0.05, 0, 0.27, 0.10, 0.01, 0, 0, 0.26, 0.43, 0.12, 0.46, 0.71, 1.17, 1.00, 1.08, 1.27
    };
    double[] e = {0, 0.13, 0, 0, 0, 0.09, 0.29, 0, 0, 0.01, 0, 0, 0, 0, 0, 0};
    ChartSnapshot chart = cusum(x, 40, 1, 0.15, 100);
    for (int i = 0; i < x.length; i++) {
      assertEquals(d[i], chart.points().get(i).value(), 1e-9);
      assertEquals(-e[i], Data.lower(chart.points().get(i)), 1e-9);
    }
  }

  /** Ross, Example 13.6d (from memory): μ = 30, σ of a mean 8, d = 0.5, B = 5; signals at 8. */
  @Test
  void cusumOfRoss() {
    double[] sums = {0, 0, 1, 9, 11, 21, 30, 41};
    ChartSnapshot chart = cusum(new double[] {29, 33, 35, 42, 36, 44, 43, 45}, 30, 8, 0.5, 5);
    for (int i = 0; i < sums.length; i++) {
      assertEquals(sums[i], chart.points().get(i).value() * 8, 1e-9);
    }
    assertEquals(8, Data.firstSignal(chart));
  }

  private static ChartSnapshot cusum(
      double[] x, double target, double sigma, double reference, double interval) {
    ChartSettings settings =
        OPEN.withStandard(new ChartSettings.Standard(target, sigma))
            .withCusum(new ChartSettings.Cusum(reference, interval, 0));
    return Data.chart(Data.fed(Data.plan(1, Limits.NONE, settings), x), ChartKind.CUSUM);
  }
}
