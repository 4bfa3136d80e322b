package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.control.ChartSnapshot.EventMark;
import org.jspecify.annotations.Nullable;

/** Gathers the remaining points of a chart; limits become spans over which they do not change. */
final class SnapshotBuilder {
  private final ChartKind kind;
  private final StatisticsPlan plan;
  private final List<ChartPoint> points = new ArrayList<>();
  private final List<LimitSpan> limits = new ArrayList<>();
  private @Nullable Plotted spanStart;

  SnapshotBuilder(ChartKind kind, StatisticsPlan plan) {
    this.kind = kind;
    this.plan = plan;
  }

  void add(Plotted plotted) {
    points.add(plotted.chartPoint());
    if (spanStart == null || !spanStart.basis().equals(plotted.basis())) {
      closeSpan(plotted.number() - 1);
      spanStart = plotted;
    }
  }

  ChartSnapshot build(
      List<EventMark> events, long pointCount, long signallingCount, long newestNumber) {
    closeSpan(newestNumber);
    Limits given = kind.onSpecifiedScale() ? plan.limits() : Limits.NONE;
    return new ChartSnapshot(
        kind,
        new Axis(plan.quantity(), kind == ChartKind.CUSUM ? "sigma" : plan.unit()),
        points,
        limits,
        events,
        given,
        new ChartSnapshot.Totals(pointCount, signallingCount));
  }

  private void closeSpan(long toNumber) {
    if (spanStart == null || Double.isNaN(spanStart.basis().centre())) {
      return;
    }
    JudgedLimits basis = spanStart.basis();
    limits.add(
        new LimitSpan(
            spanStart.number(),
            toNumber,
            basis.centre(),
            known(basis.lower()),
            known(basis.upper()),
            basis.frozen(),
            basis.phase()));
  }

  private static @Nullable Double known(double limit) {
    return Double.isNaN(limit) ? null : limit;
  }
}
