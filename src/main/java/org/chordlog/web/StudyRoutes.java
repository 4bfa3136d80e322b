package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.State;
import org.chordlog.station.Stations;
import org.chordlog.store.Store;
import org.chordlog.study.Criteria;
import org.chordlog.study.StudyPlanner;
import org.chordlog.study.StudyPlanner.Assumed;
import org.chordlog.study.StudyPlanner.Option;
import org.chordlog.study.StudySettings;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Downloads;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Studies of the gauge: planned, done step by step at a station, evaluated. */
final class StudyRoutes {
  private static final String ONE = "/api/studies/{study}";
  private static final int MOST = 200;
  private static final int MOST_PLANNED = 400;

  private final Store store;
  private final Stations stations;
  private final Clock clock;

  StudyRoutes(Store store, Stations stations, Clock clock) {
    this.store = store;
    this.stations = stations;
    this.clock = clock;
  }

  /** What a study is to become, and why. */
  record StudyState(@Needed @Nullable State state, @Nullable String why) {}

  /** A measurement that was spoilt: the last one if no id is given. */
  record Again(@Nullable Long measurementId, @Nullable String reason) {}

  /** How large a study has to be; null where none decides. */
  record StudySize(
      @Nullable Option design,
      @JsonPropertyDescription("what to expect, in a sentence") String says) {}

  List<Route> routes() {
    return List.of(
        Route.get("/api/studies", "Studies of the gauge, the newest first")
            .answersList(StudyView.class, call -> list()),
        Route.get("/api/study-kinds", "Kinds of studies, and what has to be named to plan one")
            .answersList(StudyKindView.class, call -> StudyKindView.all()),
        Route.post(Right.GAUGE, "/api/studies", "Plans a study; it is paused until it is started")
            .body(StudyForm.class)
            .creates(StudyView.class, this::plan),
        Route.get(ONE, "A study, and what to measure next; no values")
            .answers(StudyView.class, call -> view(find(call))),
        Route.post(Right.GAUGE, ONE + "/state", "Starts, pauses, ends or gives up a study")
            .body(StudyState.class)
            .answers(StudyView.class, this::become),
        Route.post(
                Right.GAUGE,
                ONE + "/measure-again",
                "Takes a spoilt measurement out; its step is open again")
            .body(Again.class)
            .answers(StudyView.class, this::again),
        Route.get(ONE + "/result", "What a complete study found; refused before")
            .answers(StudyResultView.class, call -> StudyResultView.of(store, find(call))),
        Route.get(
                ONE + "/measurements.csv",
                "Measurements of a complete study, to be studied elsewhere")
            .query(ExportRoutes.DECIMAL, "string", ExportRoutes.DECIMAL_WORDS)
            .sends("text/csv", this::csv));
  }

  /** Costs simulated studies, so it is bounded like other figures. */
  List<Route> dear() {
    return List.of(
        Route.get("/api/study-size", "How many pieces, operators and repeats decide")
            .query(
                "expected",
                "number",
                "GRR that is expected, percent of the study variation; 15 if left out")
            .query("limit", "number", "GRR that passes, percent; 30 if left out")
            .query("places", "integer", "marked places on each piece, 0 to 20; 0 if left out")
            .answers(StudySize.class, StudyRoutes::size));
  }

  private List<StudyView> list() {
    return store.studies().list(Long.MAX_VALUE, MOST).stream().map(this::view).toList();
  }

  private StudyView view(GaugeStudy study) {
    return StudyView.of(study, store);
  }

  private GaugeStudy find(Call call) {
    long id = call.id("study");
    return store.studies().find(id).orElseThrow(() -> Refusal.notFound("study", id));
  }

  private StudyView plan(Call call) {
    GaugeStudy.Made made = new GaugeStudy.Made(Times.micros(Instant.now(clock)), call.by());
    GaugeStudy study = call.body(StudyForm.class).study(store, made);
    var unused = stations.status(study.station());
    return view(store.studies().add(study));
  }

  private StudyView become(Call call) {
    StudyState form = call.body(StudyState.class);
    GaugeStudy study = find(call);
    if (form.state() == null) {
      throw new BadInput("state", "", "is missing", "RUNNING, PAUSED, DONE, ABANDONED");
    }
    String why = Objects.requireNonNullElse(form.why(), "");
    return view(stations.at(study.station()).study(study.id(), form.state(), call.by(), why));
  }

  private StudyView again(Call call) {
    Again form = call.body(Again.class);
    GaugeStudy study = find(call);
    Long id = form.measurementId();
    Long spoilt = id == null ? view(study).lastMeasurementId() : id;
    if (spoilt == null) {
      throw new BadInput("study", study.name(), "has no measurement yet", "one to measure again");
    }
    String reason = Objects.requireNonNullElse(form.reason(), "");
    stations.at(study.station()).measureAgain(study.id(), spoilt, reason, call.by());
    return view(study);
  }

  private void csv(Call call) {
    GaugeStudy study = find(call);
    String text = new StudyCsv(ExportRoutes.decimal(call)).text(store, study);
    Downloads.send(call, "text/csv", "study-" + study.id() + ".csv", text);
  }

  private static StudySize size(Call call) {
    Assumed assumed = Assumed.usual(call.optionalNumber("expected").orElse(15.0));
    double limit = call.optionalNumber("limit").orElse(30.0);
    int places = (int) call.query("places", 0, 0, 20);
    StudySettings settings = StudySettings.usual().with(Criteria.USUAL.withGaugePercent(limit));
    Optional<Option> found =
        StudyPlanner.fewest(assumed, places == 1 ? 0 : places, MOST_PLANNED, settings);
    Option design = found.orElse(null);
    return new StudySize(design, StudyPlanner.says(design, assumed, limit));
  }
}
