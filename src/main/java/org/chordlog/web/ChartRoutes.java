package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.Drawing;
import org.chordlog.chart.PictureKind;
import org.chordlog.chart.PointPlace;
import org.chordlog.monitor.Monitor;
import org.chordlog.monitor.Slice;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.Scope;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Charts of a job as SVG, with the places of their points. */
final class ChartRoutes {
  private static final int WIDE_PX = 600;
  private final Store store;
  private final Monitor monitor;
  private final Pictures pictures;

  ChartRoutes(Store store, Monitor monitor, Pictures pictures) {
    this.store = store;
    this.monitor = monitor;
    this.pictures = pictures;
  }

  /** A chart that can be had. */
  record ChartName(@JsonPropertyDescription("as in the path") String kind, String title) {
    static ChartName of(PictureKind kind) {
      return new ChartName(slug(kind), kind.title());
    }
  }

  /** A chart and where its points are drawn. */
  record ChartView(
      long jobId,
      String kind,
      String title,
      int widthPx,
      int heightPx,
      String svg,
      List<PlaceView> places) {
    static ChartView of(long jobId, PictureKind kind, ChartPicture picture) {
      return new ChartView(
          jobId,
          slug(kind),
          kind.title(),
          picture.size().widthPx(),
          picture.size().heightPx(),
          picture.svg(),
          picture.places().stream().map(PlaceView::of).toList());
    }
  }

  /** Where something is drawn, px from the upper left, and what to say of it. */
  record PlaceView(
      @JsonPropertyDescription("counted from 0 downwards") int panel,
      double xPx,
      double yPx,
      String label,
      @JsonPropertyDescription("control limits there, in words; empty without any") String limits,
      @JsonPropertyDescription("null where it is no point of a control chart")
          @Nullable PointView point) {
    static PlaceView of(PointPlace place) {
      ChartPoint point = place.point();
      return new PlaceView(
          place.panel(),
          place.xPx(),
          place.yPx(),
          place.label(),
          place.limits(),
          point == null ? null : PointView.of(point));
    }
  }

  List<Route> routes() {
    String one = "/api/jobs/{job}/charts/{kind}";
    return List.of(
        Slices.asked(
                Route.get("/api/jobs/{job}/charts", "Charts that this job has, the first to show"))
            .query("characteristic", "string", "a position, or the whole piece")
            .answersList(ChartName.class, this::list),
        sized(Route.get(one, "A chart with the places of its points"))
            .answers(ChartView.class, this::chart),
        sized(Route.get(one + "/picture.svg", "A chart as a picture"))
            .sends("image/svg+xml", this::svg));
  }

  private static Route.Draft sized(Route.Draft draft) {
    return ChartOptions.asked(Slices.asked(draft))
        .query("characteristic", "string", "a position, or the whole piece; the first if left out")
        .query("scope", "string", "of a distribution: phase (the newest one) or job, as left out");
  }

  private List<ChartName> list(Call call) {
    long job = JobRoutes.find(store.jobs(), call).id();
    return monitor.read(
        job,
        Slices.of(call),
        statistics -> {
          JobCharts source = source(statistics, call, false);
          return Arrays.stream(PictureKind.values())
              .filter(kind -> kind.draw(source).isPresent())
              .map(ChartName::of)
              .toList();
        });
  }

  private ChartView chart(Call call) {
    PictureKind kind = call.choiceInPath("kind", PictureKind.class);
    ChartPicture picture = picture(call, kind);
    return ChartView.of(call.id("job"), kind, picture);
  }

  private void svg(Call call) {
    ChartPicture picture = picture(call, call.choiceInPath("kind", PictureKind.class));
    call.ctx().contentType("image/svg+xml").result(picture.svg());
  }

  private ChartPicture picture(Call call, PictureKind kind) {
    long job = JobRoutes.find(store.jobs(), call).id();
    ChartOptions look = ChartOptions.of(call);
    String tag = monitor.standing(job).tag();
    call.unlessKnown(tag);
    Slice slice = Slices.of(call);
    Pictures.Key key =
        new Pictures.Key(
            "job " + job + " " + slice + scope(call),
            kind,
            call.text("characteristic", ""),
            look,
            tag);
    return pictures.get(key, () -> drawing(call, job, slice, kind));
  }

  private Drawing drawing(Call call, long job, Slice slice, PictureKind kind) {
    ChartOptions look = ChartOptions.of(call);
    boolean wide = look.size().widthPx() >= WIDE_PX;
    Optional<Drawing> drawing =
        monitor.read(
            job, slice, statistics -> kind.draw(look.unit().of(source(statistics, call, wide))));
    return drawing.orElseThrow(() -> Refusal.notFound("chart of this job", slug(kind)));
  }

  private static JobCharts source(JobStatistics statistics, Call call, boolean withEdge) {
    return new JobCharts(
        statistics, StatisticsRoutes.characteristic(statistics, call), scope(call), withEdge);
  }

  private static Scope scope(Call call) {
    return call.choice("scope", Scope.class).orElse(Scope.JOB);
  }

  static String slug(PictureKind kind) {
    return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
