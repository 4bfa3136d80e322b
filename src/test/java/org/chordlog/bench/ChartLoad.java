package org.chordlog.bench;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.ChartRenderer;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.Charts;
import org.chordlog.chart.PictureKind;
import org.chordlog.chart.PictureSize;
import org.chordlog.chart.Theme;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartSnapshot;

/**
 * Load program: time and size of one chart as SVG by its count of points, and as a ratio to the
 * chart of 100. A job's snapshot holds at most about 1,500 points, however long the job is.
 */
final class ChartLoad {
  private static final int[] POINTS = {100, 25, 500, 1500};
  private static final int WARM = 60;
  private static final int RUNS = 41;

  private ChartLoad() {}

  public static void main(String[] arguments) {
    try (ChartRenderer renderer = ChartRenderer.start()) {
      measure(renderer, PictureKind.INDIVIDUALS);
      measure(renderer, PictureKind.MEAN_AND_RANGE);
    }
  }

  /** The sizes take turns, so that none of them has the cold start to itself. */
  private static void measure(ChartRenderer renderer, PictureKind kind) {
    ChartSource[] sources =
        Arrays.stream(POINTS).mapToObj(ChartLoad::source).toArray(n -> new ChartSource[n]);
    double[][] millis = new double[POINTS.length][RUNS];
    for (int run = -WARM; run < RUNS; run++) {
      for (int size = 0; size < POINTS.length; size++) {
        millis[size][Math.max(0, run)] = draw(renderer, kind, sources[size]);
      }
    }
    double base = StoreLoad.median(millis[0]);
    for (int size = 0; size < POINTS.length; size++) {
      double median = StoreLoad.median(millis[size]);
      System.out.printf(
          Locale.ROOT,
          "%-15s %5d points: median %6.2f ms, worst %6.2f ms, %5.2f times that of 100, %4.1f kB%n",
          kind.title(),
          POINTS[size],
          median,
          Arrays.stream(millis[size]).max().orElseThrow(),
          median / base,
          picture(renderer, kind, sources[size]).svg().length() / 1000.0);
    }
  }

  private static ChartSource source(int points) {
    ChartSnapshot individuals = Charts.control(ChartKind.INDIVIDUALS, points, 1801, 2.2);
    ChartSnapshot mean = Charts.mean(points);
    ChartSnapshot range = Charts.range(points);
    return kind ->
        Optional.of(
            switch (kind) {
              case MEAN -> mean;
              case RANGE -> range;
              default -> individuals;
            });
  }

  private static double draw(ChartRenderer renderer, PictureKind kind, ChartSource source) {
    long start = System.nanoTime();
    picture(renderer, kind, source);
    return (System.nanoTime() - start) / 1e6;
  }

  private static ChartPicture picture(
      ChartRenderer renderer, PictureKind kind, ChartSource source) {
    return renderer
        .draw(kind.draw(source).orElseThrow(), new PictureSize(1000, 560), Theme.PAGE)
        .join()
        .orElseThrow();
  }
}
