package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.stats.control.Axis;
import org.chordlog.stats.control.ChartKind;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.PointExclusion;
import org.chordlog.stats.control.PointReadings;
import org.chordlog.stats.control.Signal;

/** Invented chart snapshots. */
public final class Charts {
  private Charts() {}

  public static ChartSnapshot mean(int points) {
    return control(ChartKind.MEAN, points, 1801, 2.2);
  }

  public static ChartSnapshot range(int points) {
    return control(ChartKind.RANGE, points, 5, 1.2);
  }

  /** Two phases, a signal at every 11th point, every 17th excluded, an event before the middle. */
  public static ChartSnapshot control(ChartKind kind, int count, double centre, double sigma) {
    Random random = new Random(kind.name().hashCode());
    List<ChartPoint> points = new ArrayList<>();
    for (long n = 1; n <= count; n++) {
      double z = n % 11 == 0 ? 3.4 : Math.max(-2.7, Math.min(2.7, random.nextGaussian()));
      points.add(point(n, centre + sigma * z, n % 17 == 0, n % 11 == 0 ? 1 : 0));
    }
    return with(kind, points, spans(count, centre, sigma), events(count));
  }

  public static ChartSnapshot with(
      ChartKind kind,
      List<ChartPoint> points,
      List<LimitSpan> spans,
      List<ChartSnapshot.EventMark> events) {
    boolean specified = kind == ChartKind.INDIVIDUALS;
    return new ChartSnapshot(
        kind,
        new Axis("Radius", "mm"),
        points,
        spans,
        events,
        new Limits(specified ? 1788.0 : null, specified ? 1812.0 : null, specified ? 1800.0 : null),
        new ChartSnapshot.Totals(
            points.size(), points.stream().filter(ChartPoint::signalling).count()));
  }

  /** 60 points of which the 20th to the 40th are above the centre together. */
  static ChartSnapshot offCentre() {
    List<ChartPoint> points = new ArrayList<>();
    for (long n = 1; n <= 60; n++) {
      points.add(point(n, 1801 + (double) (n % 3), false, n < 20 || n > 40 ? 0 : 2));
    }
    return with(ChartKind.MEAN, points, spans(60, 1801, 2.2), List.of());
  }

  /** Upper and lower sums; the last points signal below. */
  public static ChartSnapshot cusum(int count) {
    List<ChartPoint> points = new ArrayList<>();
    for (long n = 1; n <= count; n++) {
      double lower = n < count - 9 ? -0.6 * (n % 3) : -0.7 * (n + 9 - count);
      List<Signal> signals =
          lower < -5 ? List.of(new Signal(1, List.of(n), Signal.Side.BELOW)) : List.of();
      points.add(
          new ChartPoint(
              n,
              0.4 * (n % 5),
              lower,
              1,
              new PointReadings(n, n, (int) n, "middle", n),
              new PointExclusion(false, ""),
              signals));
    }
    return with(
        ChartKind.CUSUM,
        points,
        List.of(new LimitSpan(1, count, 0, -5.0, 5.0, false, 1)),
        List.of());
  }

  public static ChartPoint point(long number, double value, boolean excluded, int test) {
    List<Signal> signals =
        test == 0 ? List.of() : List.of(new Signal(test, List.of(number), Signal.Side.ABOVE));
    return new ChartPoint(
        number,
        value,
        null,
        3,
        new PointReadings(3 * number - 2, 3 * number, (int) number, "middle", number * 60_000_000),
        new PointExclusion(excluded, excluded ? "bridge slipped" : ""),
        signals);
  }

  private static List<LimitSpan> spans(int count, double centre, double sigma) {
    if (count < 4) {
      return List.of();
    }
    long half = count / 2;
    double lower = Math.max(0, centre - 3 * sigma);
    return List.of(
        new LimitSpan(1, half, centre, lower, centre + 3 * sigma, true, 1),
        new LimitSpan(half + 1, count, centre - sigma / 3, lower, centre + 2.8 * sigma, false, 2));
  }

  private static List<ChartSnapshot.EventMark> events(int count) {
    return count < 4
        ? List.of()
        : List.of(
            event(count / 4 + 1, JobEvent.Kind.CORRECTION),
            event(count / 2 + 1, JobEvent.Kind.MATERIAL_LOT));
  }

  private static ChartSnapshot.EventMark event(long before, JobEvent.Kind kind) {
    return new ChartSnapshot.EventMark(
        before,
        new JobEvent(
            before,
            1,
            "rolls 1",
            kind,
            before,
            new JobEvent.Content(null, null, "lot B", ""),
            new Recorded(0, "operator")));
  }
}
