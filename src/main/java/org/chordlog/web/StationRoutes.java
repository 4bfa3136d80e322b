package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.account.Right;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Zero;
import org.chordlog.station.Happening;
import org.chordlog.station.StationActions;
import org.chordlog.station.Stations;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** Stations and their state now, and what an operator does at one. */
final class StationRoutes {
  private static final int LONGEST_NAME = 80;
  private static final String ONE = "/api/stations/{station}";
  private final Stations stations;

  StationRoutes(Stations stations) {
    this.stations = stations;
  }

  /** Who measures. */
  record PersonForm(@Nullable String name) {}

  /** Whether masters are measured instead of pieces. */
  record MastersForm(boolean active) {}

  /** The bridge to mount. */
  record BridgeChoice(long bridgeId) {}

  /** The job that a depth far from the target is a piece of; null for a later rest. */
  record AnotherForm(
      @JsonPropertyDescription(
              "the job that a depth far from the target is a piece of, which is worked on from then"
                  + " on; null for a later rest of one contact")
          @Nullable Long jobId) {}

  /** The job to work on. */
  record JobChoice(long jobId) {}

  List<Route> routes() {
    return Stream.of(looked(), depths(), work()).flatMap(List::stream).toList();
  }

  private List<Route> looked() {
    return List.of(
        Route.get("/api/stations", "Stations as they stand")
            .answersList(
                StationView.class,
                call -> stations.statuses().stream().map(StationView::of).toList()),
        Route.get(ONE, "A station as it stands").answers(StationView.class, this::view));
  }

  /** What is done with the depth that is shown. */
  private List<Route> depths() {
    return List.of(
        Route.post(
                Right.MEASURE,
                ONE + "/trigger",
                "Takes the rest that lasts or the next one, and waits for it")
            .answers(TriggerView.class, call -> TriggerView.of(at(call).trigger())),
        Route.post(
                Right.GAUGE,
                ONE + "/find-delay",
                "Finds the delay between the links of depth and length from the next piece, which is"
                    + " run forth and back")
            .answers(StationView.class, this::findDelay),
        Route.post(
                Right.MEASURE,
                ONE + "/confirm",
                "Says yes to the station's question about the last depth")
            .answers(TriggerView.class, call -> TriggerView.of(at(call).confirm(call.by()))),
        Route.post(Right.JOB, ONE + "/another", "Answers that question: it is another piece")
            .body(AnotherForm.class)
            .answers(
                TriggerView.class,
                call -> TriggerView.of(at(call).another(call.body(AnotherForm.class).jobId()))),
        Route.post(
                Right.MEASURE,
                ONE + "/decline",
                "Says no to that question: the depth is not recorded")
            .answers(StationView.class, this::decline),
        Route.post(Right.MEASURE, ONE + "/zero", "Takes the zero; refused while the plunger moves")
            .answers(ZeroView.class, this::zeroed));
  }

  private ZeroView zeroed(Call call) {
    Zero kept = at(call).takeZero(call.by());
    return ZeroView.of(kept, at(call).zeroDoubts().get(kept.id()));
  }

  /** Who measures what, with which bridge. */
  private List<Route> work() {
    return List.of(
        Route.post(
                Right.MEASURE,
                ONE + "/person",
                "Who measures from now on; where people sign in, who asks")
            .body(PersonForm.class)
            .answers(StationView.class, this::person),
        Route.delete(Right.MEASURE, ONE + "/person", "Nobody is named as who measures any more")
            .does(call -> at(call).measuredByNobody()),
        Route.post(
                Right.GAUGE,
                ONE + "/on-masters",
                "Suspends the job while masters are measured, or goes on")
            .body(MastersForm.class)
            .answers(StationView.class, this::masters),
        Route.post(
                Right.MEASURE,
                ONE + "/bridge",
                "Mounts a bridge; the zero is stale until taken again")
            .body(BridgeChoice.class)
            .answers(StationView.class, this::mount),
        Route.post(Right.JOB, ONE + "/job", "Selects the job that the readings go to")
            .body(JobChoice.class)
            .answers(StationView.class, this::select),
        Route.post(
                Right.MEASURE,
                ONE + "/events",
                "Records a correction, lot, set-up, note or freezing of limits")
            .body(JobEventForm.class)
            .creates(JobEventView.class, this::happened));
  }

  private StationActions at(Call call) {
    return at(stations, call);
  }

  static StationActions at(Stations stations, Call call) {
    return stations.at(known(stations, call));
  }

  /** Not found, rather than bad input, when the path names no station. */
  static String known(Stations stations, Call call) {
    String name = call.name("station");
    if (stations.settings().stream().noneMatch(each -> each.name().equals(name))) {
      throw Refusal.notFound("station", name);
    }
    return name;
  }

  private StationView view(Call call) {
    return StationView.of(stations.status(known(stations, call)));
  }

  private StationView findDelay(Call call) {
    at(call).findDelay();
    return view(call);
  }

  private StationView decline(Call call) {
    at(call).decline();
    return view(call);
  }

  private StationView person(Call call) {
    StationActions actions = at(call);
    String name = call.caller() == null ? call.body(PersonForm.class).name() : call.by();
    if (name == null || name.isBlank() || name.length() > LONGEST_NAME) {
      throw new BadInput("name", name == null ? "" : name, "is not a name", "1 to 80 characters");
    }
    actions.measuredBy(name.strip());
    return view(call);
  }

  private StationView masters(Call call) {
    at(call).onMasters(call.body(MastersForm.class).active());
    return view(call);
  }

  private StationView mount(Call call) {
    StationActions actions = at(call);
    actions.changeBridge(call.body(BridgeChoice.class).bridgeId(), call.by());
    return view(call);
  }

  private StationView select(Call call) {
    StationActions actions = at(call);
    long jobId = call.body(JobChoice.class).jobId();
    actions.selectJob(jobId);
    return view(call);
  }

  private JobEventView happened(Call call) {
    StationActions actions = at(call);
    Happening happening = call.body(JobEventForm.class).happening();
    return JobEventView.of(actions.record(happening, call.by()));
  }
}
