package org.chordlog.web;

import java.util.Arrays;
import java.util.List;
import org.chordlog.chart.ChartPicture;
import org.chordlog.chart.PictureKind;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.store.Store;
import org.chordlog.web.ChartRoutes.ChartName;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;

/** Charts of a complete study as SVG, with the places of what they show. */
final class StudyChartRoutes {
  private static final String CHARTS = "/api/studies/{study}/charts";
  private static final long NO_JOB = 0;
  private final Store store;
  private final Pictures pictures;

  StudyChartRoutes(Store store, Pictures pictures) {
    this.store = store;
    this.pictures = pictures;
  }

  List<Route> routes() {
    return List.of(
        Route.get(CHARTS, "Charts of a complete study, the first to show; refused before")
            .answersList(ChartName.class, this::list),
        ChartOptions.asked(
                Route.get(CHARTS + "/{kind}", "A chart of a study with the places of its points"))
            .answers(ChartRoutes.ChartView.class, this::chart),
        ChartOptions.asked(
                Route.get(CHARTS + "/{kind}/picture.svg", "A chart of a study as a picture"))
            .sends("image/svg+xml", this::svg));
  }

  private List<ChartName> list(Call call) {
    StudyCharts charts = charts(call);
    return Arrays.stream(PictureKind.values())
        .filter(kind -> kind.draw(charts).isPresent())
        .map(ChartName::of)
        .toList();
  }

  private ChartRoutes.ChartView chart(Call call) {
    PictureKind kind = call.choiceInPath("kind", PictureKind.class);
    return ChartRoutes.ChartView.of(NO_JOB, kind, picture(call, kind));
  }

  private void svg(Call call) {
    ChartPicture picture = picture(call, call.choiceInPath("kind", PictureKind.class));
    call.ctx().contentType("image/svg+xml").result(picture.svg());
  }

  private StudyCharts charts(Call call) {
    long id = call.id("study");
    GaugeStudy study = store.studies().find(id).orElseThrow(() -> Refusal.notFound("study", id));
    return StudyCharts.of(new StudyEvaluation(store, study));
  }

  private ChartPicture picture(Call call, PictureKind kind) {
    StudyCharts charts = charts(call);
    String tag = Integer.toHexString(charts.hashCode());
    call.unlessKnown(tag);
    ChartOptions look = ChartOptions.of(call);
    Pictures.Key key = new Pictures.Key("study " + call.id("study"), kind, "", look, tag);
    return pictures.get(
        key,
        () ->
            kind.draw(look.unit().of(charts))
                .orElseThrow(
                    () -> Refusal.notFound("chart of this study", ChartRoutes.slug(kind))));
  }
}
