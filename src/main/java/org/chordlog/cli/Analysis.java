package org.chordlog.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.stats.ChartKind;
import org.chordlog.stats.ChartPoint;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.MachineVerdict;
import org.chordlog.stats.Summary;

/** What {@code analyse} found; {@code leftOut} are rows without a finite number. */
record Analysis(
    String column,
    String characteristic,
    Summary summary,
    List<ChartSnapshot> charts,
    double trendBase,
    MachineVerdict trend,
    List<Long> leftOut) {
  Analysis(
      String column,
      JobStatistics job,
      double trendBase,
      MachineVerdict trend,
      List<Long> leftOut) {
    this(
        column,
        job.characteristics().get(0),
        job.summary(job.characteristics().get(0), Summary.Scope.JOB),
        charts(job),
        trendBase,
        trend,
        List.copyOf(leftOut));
  }

  private static List<ChartSnapshot> charts(JobStatistics job) {
    String name = job.characteristics().get(0);
    List<ChartSnapshot> charts = new ArrayList<>();
    for (ChartKind kind : job.kinds(name)) {
      charts.add(job.chart(name, kind));
    }
    return charts;
  }

  /** A run test is broken, or a value lies beyond a specification limit. */
  boolean fault() {
    return charts.stream().anyMatch(chart -> !signals(chart).isEmpty())
        || beyond("observedBelowPpm")
        || beyond("observedAbovePpm");
  }

  private boolean beyond(String figure) {
    return summary.figure(figure).map(found -> found.value()).filter(ppm -> ppm > 0).isPresent();
  }

  static List<ChartPoint> signals(ChartSnapshot chart) {
    return chart.points().stream().filter(point -> !point.signals().isEmpty()).toList();
  }

  String text() {
    return new AnalysisText(this).toString();
  }

  String json() {
    Map<String, Object> json = new LinkedHashMap<>();
    json.put("column", column);
    json.put("count", summary.count());
    json.put("rowsLeftOut", leftOut);
    json.put("figures", summary.figures());
    json.put("cautions", summary.cautions());
    json.put("trendRelativeTo", trendBase);
    json.put("trend", trend);
    json.put("charts", charts);
    return JsonText.of(json);
  }
}
