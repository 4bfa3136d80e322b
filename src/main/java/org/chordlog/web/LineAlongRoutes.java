package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Arrays;
import java.util.List;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.Job;
import org.chordlog.monitor.Monitor;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;
import org.chordlog.store.Store;
import org.chordlog.verdict.AlongStatement;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/** How even the pieces of a job are along their length, charted and judged piece by piece. */
final class LineAlongRoutes {
  private static final String ALONG = "/api/jobs/{job}/along";

  private final Store store;
  private final Monitor monitor;
  private final Pictures pictures;

  LineAlongRoutes(Store store, Monitor monitor, Pictures pictures) {
    this.store = store;
    this.monitor = monitor;
    this.pictures = pictures;
  }

  /** One measure, with what its charts say. */
  record AlongView(
      @JsonPropertyDescription("as in the path of its chart") AlongMeasure measure,
      String title,
      @JsonPropertyDescription("by which an answer to a signal names it") String characteristic,
      Statement statement,
      @JsonPropertyDescription("stretches that hold or held its verdict, newest first")
          List<ChartFacts.SpellView> spells,
      @JsonPropertyDescription("that ran through, excluded ones too") long pieces,
      @JsonPropertyDescription("parameters of the charts, as a sentence") String settings) {
    static AlongView of(AlongStatistics along, AlongMeasure measure) {
      return new AlongView(
          measure,
          measure.title(),
          measure.characteristic(),
          new AlongStatement(measure, along.control(measure)).statement(),
          ChartFacts.spells(along.control(measure), along.kinds(measure)),
          along.count(),
          along.settings(measure));
    }
  }

  List<Route> routes() {
    return List.of(
        Route.get(
                ALONG, "Range and trend along the pieces of a job, each judged from piece to piece")
            .answersList(AlongView.class, this::views),
        ChartOptions.asked(
                Route.get(ALONG + "/{measure}/chart", "A control chart of one of them")
                    .query(
                        "kind",
                        "string",
                        "individuals-and-moving-range (if left out), ewma, cusum"))
            .answers(ChartRoutes.ChartView.class, this::chart));
  }

  private List<AlongView> views(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    return monitor.readAlong(
        job.id(),
        along ->
            Arrays.stream(AlongMeasure.values()).map(each -> AlongView.of(along, each)).toList());
  }

  private ChartRoutes.ChartView chart(Call call) {
    Job job = JobRoutes.find(store.jobs(), call);
    AlongMeasure measure = call.choiceInPath("measure", AlongMeasure.class);
    PictureKind kind =
        call.choice("kind", PictureKind.class).orElse(PictureKind.INDIVIDUALS_AND_MOVING_RANGE);
    String tag = monitor.standing(job.id()).tag();
    call.unlessKnown(tag);
    Pictures.Key key =
        new Pictures.Key("along " + job.id(), kind, measure.title(), ChartOptions.of(call), tag);
    return ChartRoutes.ChartView.of(
        job.id(), kind, pictures.get(key, () -> drawing(job, measure, kind)));
  }

  private Drawing drawing(Job job, AlongMeasure measure, PictureKind kind) {
    return monitor
        .readAlong(job.id(), along -> kind.draw(AlongCharts.of(along, measure)))
        .orElseThrow(() -> Refusal.notFound("piece that ran through in job", job.id()));
  }
}
