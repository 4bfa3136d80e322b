package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.chart.ChartSource;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.ShortRun;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;
import org.chordlog.verdict.ShortRunStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/** Short runs: the newest jobs of a machine pooled on one chart. */
final class ShortRunRoutes {
  private static final int MOST_JOBS = 50;
  private final Monitor monitor;
  private final Pictures pictures;

  ShortRunRoutes(Monitor monitor, Pictures pictures) {
    this.monitor = monitor;
    this.pictures = pictures;
  }

  /** What the pooled chart and its figures say. */
  record ShortRunView(
      String machine,
      ShortRun.Basis basis,
      @JsonPropertyDescription("what these jobs show together") Statement statement,
      @JsonPropertyDescription("readings pooled") long count,
      List<FigureView> figures,
      List<Caution> cautions,
      ChartFacts charts) {}

  List<Route> routes() {
    String one = "/api/machines/{machine}/short-runs";
    return List.of(
        asked(Route.get(one, "Newest jobs of a machine pooled, figures, limits and signals"))
            .answers(ShortRunView.class, this::view),
        ChartOptions.asked(
                asked(Route.get(one + "/chart", "The pooled chart with its points' places")))
            .query("kind", "string", "individuals (if left out), moving-range, ewma, cusum …")
            .answers(ChartRoutes.ChartView.class, this::chart));
  }

  private static Route.Draft asked(Route.Draft draft) {
    return draft
        .query(
            "basis",
            "string",
            "deviation (from target, mm) or standardised (in sixths of the tolerance, if left out)")
        .query("jobs", "integer", "newest jobs, 1 to " + MOST_JOBS + ", 20 if left out");
  }

  private ShortRun pooled(Call call) {
    int jobs = (int) call.query("jobs", 20, 1, MOST_JOBS);
    return monitor.pooled(call.name("machine"), jobs, basis(call));
  }

  private static ShortRun.Basis basis(Call call) {
    return call.choice("basis", ShortRun.Basis.class).orElse(ShortRun.Basis.STANDARDISED);
  }

  private ShortRunView view(Call call) {
    ShortRun pooled = pooled(call);
    JobStatistics statistics = pooled.statistics();
    Summary summary = statistics.summary(ShortRun.CHARACTERISTIC, Scope.JOB);
    ChartFacts charts = ChartFacts.of(statistics, ShortRun.CHARACTERISTIC);
    return new ShortRunView(
        call.name("machine"),
        basis(call),
        new ShortRunStatement(pooled.jobs(), summary.count(), charts.signalCount()).statement(),
        summary.count(),
        summary.figures().stream().map(FigureView::of).toList(),
        summary.cautions(),
        charts);
  }

  private ChartRoutes.ChartView chart(Call call) {
    PictureKind kind = call.choice("kind", PictureKind.class).orElse(PictureKind.INDIVIDUALS);
    JobStatistics statistics = pooled(call).statistics();
    ChartOptions look = ChartOptions.of(call);
    String tag = basis(call) + " " + call.text("jobs", "") + " " + statistics.lastReadingId();
    Pictures.Key key = new Pictures.Key("pooled " + call.name("machine"), kind, "", look, tag);
    return ChartRoutes.ChartView.of(
        0, kind, pictures.get(key, () -> drawing(statistics, kind, look)));
  }

  private static Drawing drawing(JobStatistics statistics, PictureKind kind, ChartOptions look) {
    ChartSource source = new JobCharts(statistics, ShortRun.CHARACTERISTIC, Scope.JOB, false);
    return kind.draw(look.unit().of(source))
        .orElseThrow(() -> Refusal.notFound("pooled chart", kind.title()));
  }
}
