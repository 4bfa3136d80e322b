package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.store.Alerts;
import org.chordlog.verdict.AlertServiceWords;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Page;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Alerts: those that are open, those that are over, and what happened to each. */
final class AlertRoutes {
  static final String PATH = "/api/alerts";
  private static final String ONE = PATH + "/{alert}";
  private static final int MOST = 200;
  private static final int WEEKS = 8;
  private static final Duration WEEK = Duration.ofDays(7);

  private static final Comparator<AlertView> BY_URGENCY =
      Comparator.comparingInt(AlertRoutes::rank)
          .thenComparing(AlertView::priority)
          .thenComparing(each -> Instant.parse(each.actBy()))
          .thenComparingLong(AlertView::id);

  private final Alerts alerts;
  private final AlertFeed feed;
  private final Supplier<AlertsState> service;
  private final AlertViews views;

  AlertRoutes(AlertViews views, AlertFeed feed, Supplier<AlertsState> service) {
    this.alerts = views.alerts();
    this.views = views;
    this.feed = feed;
    this.service = service;
  }

  /** The alerts that are not over, and what looks for them. */
  record AlertsView(
      @JsonPropertyDescription("how many wait for somebody, of all") int waiting,
      @JsonPropertyDescription("since when the service looks for alerts; null: it does not")
          @Nullable String watchingSince,
      @JsonPropertyDescription("what is to be known of it, the most urgent first")
          List<Statement> service,
      @JsonPropertyDescription("those that wait first, by how urgent they are")
          List<AlertView> alerts) {}

  /** How many alerts were raised in seven days. */
  record WeekView(String from, String to, long raised) {}

  List<Route> routes() {
    return List.of(
        Route.get(PATH, "Alerts that are not over, by how urgent they are")
            .query("machine", "string", "only those about that machine")
            .query("station", "string", "only those about that station")
            .answers(AlertsView.class, this::open),
        Route.get(PATH + "/waiting", "How many alerts wait for somebody")
            .answers(AlertFeed.Waiting.class, call -> feed.now()),
        Route.get(PATH + "/weeks", "How many alerts were raised in each of the last weeks")
            .answersList(WeekView.class, call -> weeks()),
        Route.get(PATH + "/history", "Alerts, those over too, the newest first")
            .query("before", "integer", "cursor: only alerts with an id below it")
            .query("limit", "integer", "1 to " + MOST + ", 50 if left out")
            .answersPage(AlertView.class, this::history),
        Route.get(ONE, "An alert").answers(AlertView.class, this::one),
        Route.get(ONE + "/events", "What happened to an alert, in order")
            .answersList(AlertView.Happened.class, this::events));
  }

  private AlertsView open(Call call) {
    AlertsState state = service.get();
    Instant since = state.watchingSince();
    AlertsView view =
        new AlertsView(
            alerts.waiting(),
            since == null ? null : Times.iso(Times.micros(since)),
            AlertServiceWords.of(since != null, state.channels(), state.problems()),
            views.all(call, alerts.open().stream().filter(about(call)).toList()).stream()
                .sorted(BY_URGENCY)
                .toList());
    call.unlessKnown(Integer.toHexString(view.hashCode()));
    return view;
  }

  private static Predicate<Alert> about(Call call) {
    String machine = call.text("machine", "");
    String station = call.text("station", "");
    return alert ->
        switch (alert.subject().type()) {
          case MACHINE -> station.isEmpty() && named(alert.subject(), machine);
          case STATION -> machine.isEmpty() && named(alert.subject(), station);
          case SERVICE, EDGE -> machine.isEmpty() && station.isEmpty();
        };
  }

  private static boolean named(AlertSubject subject, String name) {
    return name.isEmpty() || subject.name().equals(name);
  }

  /** Those that wait before those that somebody knows, then what is put aside or under repair. */
  private static int rank(AlertView alert) {
    return alert.state().waits() ? 0 : alert.state() == AlertState.ACKNOWLEDGED ? 1 : 2;
  }

  private Page<AlertView> history(Call call) {
    int limit = (int) call.query("limit", 50, 1, MOST);
    long before = call.query("before", Long.MAX_VALUE, 1, Long.MAX_VALUE);
    List<Alert> page = alerts.list(before, limit);
    List<AlertView> all = views.all(call, page);
    Long next = page.size() < limit ? null : (Long) page.get(page.size() - 1).id();
    return new Page<>(all, next);
  }

  private AlertView one(Call call) {
    Alert alert = find(alerts, call);
    AlertView view = views.of(call, alert);
    call.unlessKnown(Integer.toHexString(view.hashCode()));
    return view;
  }

  private List<AlertView.Happened> events(Call call) {
    return alerts.events(find(alerts, call).id()).stream().map(AlertView.Happened::of).toList();
  }

  /** The newest seven days first. */
  private List<WeekView> weeks() {
    long week = WEEK.toNanos() / 1_000;
    long now = views.nowMicros();
    return IntStream.range(0, WEEKS)
        .mapToObj(
            back -> {
              long to = now - back * week;
              long raised = alerts.raisedSince(to - week) - alerts.raisedSince(to);
              return new WeekView(Times.iso(to - week), Times.iso(to), raised);
            })
        .toList();
  }

  static Alert find(Alerts alerts, Call call) {
    long id = call.id("alert");
    return alerts.find(id).orElseThrow(() -> Refusal.notFound("alert", id));
  }
}
