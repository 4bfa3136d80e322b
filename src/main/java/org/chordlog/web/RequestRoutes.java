package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import org.chordlog.account.Right;
import org.chordlog.measure.LogbookEntry;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.notify.rule.AlertMove;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Json;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/**
 * What people at a plant may do to the records of a workshop computer: each is left for it as a
 * request, which it does itself when it next speaks, and comes back with its records. What it would
 * refuse by what is known here is refused at once.
 */
final class RequestRoutes {
  private static final String ALERT = AlertRoutes.PATH + "/{alert}";
  private static final int MOST = 100;
  private final Plant plant;
  private final PlantRooms rooms;
  private final Clock clock;

  RequestRoutes(Plant plant, PlantRooms rooms, Clock clock) {
    this.plant = plant;
    this.rooms = rooms;
    this.clock = clock;
  }

  /** Paths as those of the service of one workshop computer. */
  List<Route> routes() {
    return List.of(
        Route.get("/api/requests", "What was asked of the workshop computer, the newest first")
            .query("before", "integer", "cursor: only requests with an id below it")
            .query("limit", "integer", "1 to " + MOST + ", 50 if left out")
            .answersList(RequestView.class, this::list),
        Route.post(Right.ALERT, ALERT + "/acknowledgement", "Asks to acknowledge an alert")
            .body(AlertActionRoutes.WordForm.class)
            .accepts(RequestView.class, this::acknowledge),
        Route.post(Right.ALERT, ALERT + "/assignment", "Asks to say whose an alert is")
            .body(AlertActionRoutes.AssignmentForm.class)
            .accepts(RequestView.class, this::assign),
        Route.post(Right.ALERT, ALERT + "/shelf", "Asks to put an alert aside")
            .body(AlertActionRoutes.ShelfForm.class)
            .accepts(RequestView.class, this::shelve),
        Route.post(Right.MACHINE, LogbookRoutes.PATH, "Asks to write work into the log book")
            .body(LogbookForm.class)
            .accepts(RequestView.class, this::write));
  }

  private Plant.Edge edge(Call call) {
    return rooms.edge(EdgeRoutes.name(call.ctx()));
  }

  private List<RequestView> list(Call call) {
    Plant.Edge edge = edge(call);
    long before = call.query("before", Long.MAX_VALUE, 1, Long.MAX_VALUE);
    int limit = (int) call.query("limit", 50, 1, MOST);
    return plant.requests(edge.id(), before, limit).stream()
        .map(each -> RequestView.of(each, edge.name()))
        .toList();
  }

  private RequestView acknowledge(Call call) {
    String word = AlertActionRoutes.word(call);
    return asked(
        call,
        Plant.RequestKind.ACKNOWLEDGE_ALERT,
        (alert, by) -> AlertActions.acknowledge(alert, by, word),
        Map.of("word", word));
  }

  private RequestView assign(Call call) {
    AlertActionRoutes.AssignmentForm form = call.body(AlertActionRoutes.AssignmentForm.class);
    String to = AlertActionRoutes.text("to", form.to());
    String word = AlertActionRoutes.text("word", form.word());
    return asked(
        call,
        Plant.RequestKind.ASSIGN_ALERT,
        (alert, by) -> AlertActions.assign(alert, by, to, word),
        Map.of("to", to, "word", word));
  }

  private RequestView shelve(Call call) {
    AlertActionRoutes.ShelfForm form = call.body(AlertActionRoutes.ShelfForm.class);
    Duration time = form.time();
    long until = nowMicros() + time.toNanos() / 1_000;
    String reason = AlertActionRoutes.text("reason", form.reason());
    return asked(
        call,
        Plant.RequestKind.SHELVE_ALERT,
        (alert, by) -> {
          AlertRights.require(call, AlertMove.SHELVE, alert.kind());
          return AlertActions.shelve(alert, by, reason, until);
        },
        Map.of("reason", reason, "untilMicros", until));
  }

  /** {@code move} is made only to see whether it can be. */
  private RequestView asked(
      Call call,
      Plant.RequestKind kind,
      BiFunction<Alert, Recorded, AlertEvent> move,
      Map<String, Object> said) {
    Plant.Edge edge = edge(call);
    Store store = plant.store(edge.id());
    Alert alert = AlertRoutes.find(store.alerts(), call);
    if (!call.means(String.valueOf(alert.revision()))) {
      throw changedMeanwhile(call, store, alert);
    }
    Recorded by = new Recorded(nowMicros(), call.by());
    AlertEvent unused = move.apply(alert, by);
    Map<String, Object> body = new TreeMap<>(said);
    body.put("alertId", alert.id());
    return left(edge, kind, body, by);
  }

  private Refusal changedMeanwhile(Call call, Store store, Alert alert) {
    return Refusal.changedMeanwhile(
        "This alert changed meanwhile. Look at what it is now, then go on.",
        new AlertViews(store.alerts(), store.outbox(), clock).of(call, alert));
  }

  private RequestView write(Call call) {
    Plant.Edge edge = edge(call);
    LogbookForm form = call.body(LogbookForm.class);
    Recorded by = new Recorded(nowMicros(), call.by());
    LogbookEntry entry = form.entry(call.name("machine"), null, by);
    refuseAtTheMachineOnly(form, edge.name());
    return left(edge, Plant.RequestKind.LOGBOOK_ENTRY, body(entry), by);
  }

  /** A set-up changes the job in progress, and the end of a repair its alerts. */
  private static void refuseAtTheMachineOnly(LogbookForm form, String edge) {
    if (form.setsUp() || form.endsRepair()) {
      throw Refusal.conflict(
          "Say at "
              + edge
              + " that the rollers were set or the repair is over; here only the work"
              + " can be written down.");
    }
  }

  private static Map<String, Object> body(LogbookEntry entry) {
    LogbookEntry.Work work = entry.work();
    return Map.of(
        "machine", entry.machine(),
        "kind", work.kind(),
        "roller", work.roller(),
        "before", work.before(),
        "after", work.after(),
        "note", work.note(),
        "doneMicros", entry.done().atMicros(),
        "doneBy", entry.done().by());
  }

  private RequestView left(
      Plant.Edge edge, Plant.RequestKind kind, Map<String, Object> body, Recorded by) {
    return RequestView.of(plant.ask(edge.id(), kind, Json.text(body), by), edge.name());
  }

  private long nowMicros() {
    return Times.micros(Instant.now(clock));
  }

  /** What was asked of a workshop computer, and what came of it. */
  record RequestView(
      long id,
      Plant.RequestKind kind,
      @JsonPropertyDescription("as it was asked: members by its kind") Object body,
      String at,
      String by,
      @JsonPropertyDescription("whether the workshop computer has answered") boolean answered,
      @JsonPropertyDescription("why it was not done; empty where it was, or is on its way")
          String refusal,
      @JsonPropertyDescription("what is asked for, in words") String words,
      @JsonPropertyDescription("what came of it, in words") String stateWords) {
    static RequestView of(Plant.Request request, String edge) {
      Plant.Answer answer = request.answer();
      return new RequestView(
          request.id(),
          request.kind(),
          Json.tree(request.body()),
          Times.iso(request.made().atMicros()),
          request.made().by(),
          answer != null,
          answer == null ? "" : answer.refusal(),
          RequestWords.of(request.kind(), Json.tree(request.body())),
          state(answer, edge));
    }

    private static String state(Plant.@Nullable Answer answer, String edge) {
      if (answer == null) {
        return "On its way to " + edge;
      }
      return answer.refusal().isEmpty() ? "Done at " + edge : "Refused: " + answer.refusal();
    }
  }
}
