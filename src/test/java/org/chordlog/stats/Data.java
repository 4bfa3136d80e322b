package org.chordlog.stats;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.StatisticsPlan;

/** Published data under src/test/resources/stats, and short ways to feed them. */
public final class Data {
  private Data() {}

  /** Rows of numbers; a header and blank cells are left out. */
  public static double[][] rows(String name) {
    return lines(name).stream()
        .filter(line -> !line.isBlank() && !Character.isLetter(line.charAt(0)))
        .map(line -> Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble).toArray())
        .toArray(double[][]::new);
  }

  static List<String> lines(String name) {
    try (InputStream in =
        Objects.requireNonNull(Data.class.getResourceAsStream("/stats/" + name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Rows without their first cell, one after the other. */
  static double[] subgroups(double[][] rows) {
    return Arrays.stream(rows).flatMapToDouble(row -> Arrays.stream(row).skip(1)).toArray();
  }

  public static double[] column(double[][] rows, int at) {
    return Arrays.stream(rows).mapToDouble(row -> row[at]).toArray();
  }

  public static StatisticsPlan plan(int size, Limits limits, ChartSettings charts) {
    SubgroupRule rule =
        size == 1
            ? new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1)
            : new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, size);
    return new StatisticsPlan("value", "", limits, List.of("middle"), rule, charts);
  }

  public static JobStatistics fed(StatisticsPlan plan, double... values) {
    JobStatistics statistics = new JobStatistics(plan);
    feed(statistics, values);
    return statistics;
  }

  static void feed(JobStatistics statistics, double... values) {
    for (double value : values) {
      long id = statistics.lastReadingId() + 1;
      statistics.add(new Observation(id, (int) id, "middle", id, value, 0));
    }
  }

  public static ChartSnapshot chart(JobStatistics statistics, ChartKind kind) {
    return statistics.chart("middle", kind);
  }

  static double value(Summary summary, String name) {
    Double value = summary.figure(name).orElseThrow(() -> new AssertionError(name)).value();
    return value == null ? Double.NaN : value;
  }

  /** Lower limit, centre and upper limit of the newest points of a chart; NaN for none. */
  static double[] limits(JobStatistics statistics, ChartKind kind) {
    List<LimitSpan> spans = chart(statistics, kind).limits();
    LimitSpan newest = spans.get(spans.size() - 1);
    Double lower = newest.lower();
    Double upper = newest.upper();
    return new double[] {
      lower == null ? Double.NaN : lower, newest.centre(), upper == null ? Double.NaN : upper
    };
  }

  static double lower(ChartPoint point) {
    Double lower = point.lowerValue();
    return lower == null ? Double.NaN : lower;
  }

  /** Number of the first point with a signal, 0 if none. */
  static long firstSignal(ChartSnapshot chart) {
    return chart.points().stream()
        .filter(point -> !point.signals().isEmpty())
        .mapToLong(ChartPoint::number)
        .findFirst()
        .orElse(0);
  }
}
