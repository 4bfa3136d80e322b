package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.time.Duration;
import java.util.List;
import org.chordlog.account.Right;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.notify.rule.AlertActions;
import org.chordlog.notify.rule.AlertMove;
import org.chordlog.store.Alerts;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Faults;
import org.chordlog.web.http.Needed;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Route;
import org.jspecify.annotations.Nullable;

/** What people do to alerts; who may do what is in {@link AlertRights}. */
final class AlertActionRoutes {
  private static final String ONE = AlertRoutes.PATH + "/{alert}";
  private static final long MOST_MINUTES = AlertActions.MOST_SHELVED.toMinutes();
  private final Alerts alerts;
  private final AlertFeed feed;
  private final AlertViews views;

  AlertActionRoutes(AlertViews views, AlertFeed feed) {
    this.alerts = views.alerts();
    this.views = views;
    this.feed = feed;
  }

  /** What somebody says with it; may be empty. */
  record WordForm(@Nullable String word) {}

  /** Why, and for how long. */
  record ShelfForm(
      @Needed @Nullable String reason,
      @JsonPropertyDescription("minutes from now, at most a day") @Needed
          @Nullable Integer minutes) {
    /** How long; refused with every fault of the form. */
    Duration time() {
      Faults faults = new Faults();
      faults.text("reason", reason);
      Integer given = minutes;
      if (given == null || given < 1 || given > MOST_MINUTES) {
        faults.add(
            "minutes",
            given == null ? "" : given,
            given == null ? "is missing" : "is out of range",
            "1 to " + MOST_MINUTES);
      }
      faults.refuse();
      return Duration.ofMinutes(given == null ? 1 : given);
    }
  }

  /** Whose it is from now on. */
  record AssignmentForm(
      @JsonPropertyDescription("a name; empty: nobody's") @Nullable String to,
      @Nullable String word) {}

  /** Makes the event of what somebody does. */
  private interface Move {
    AlertEvent on(Alert alert, Recorded by);
  }

  List<Route> routes() {
    return List.of(
        post("/acknowledgement", "Says that somebody knows; what went away by itself is over then")
            .body(WordForm.class)
            .answers(AlertView.class, this::acknowledge),
        post("/assignment", "Says whose it is")
            .body(AssignmentForm.class)
            .answers(AlertView.class, this::assign),
        post("/shelf", "Puts it aside with a reason, for at most a day; it comes back by itself")
            .body(ShelfForm.class)
            .answers(AlertView.class, this::shelve),
        post("/shelf/end", "Ends the time that it is put aside for")
            .body(WordForm.class)
            .answers(AlertView.class, this::unshelve),
        post("/out-of-service", "Its machine or station is under repair")
            .body(Reason.class)
            .answers(AlertView.class, this::takeOut),
        post("/out-of-service/end", "The repair is over; what is still wrong is raised anew")
            .body(WordForm.class)
            .answers(AlertView.class, this::putBack));
  }

  private static Route.Draft post(String path, String summary) {
    return Route.post(Right.ALERT, ONE + path, summary);
  }

  private AlertView acknowledge(Call call) {
    String word = word(call);
    return done(call, (alert, by) -> AlertActions.acknowledge(alert, by, word));
  }

  private AlertView assign(Call call) {
    AssignmentForm form = call.body(AssignmentForm.class);
    String to = text("to", form.to());
    String word = text("word", form.word());
    return done(call, (alert, by) -> AlertActions.assign(alert, by, to, word));
  }

  private AlertView shelve(Call call) {
    ShelfForm form = call.body(ShelfForm.class);
    long micros = form.time().toNanos() / 1_000;
    String reason = text("reason", form.reason());
    return done(
        call,
        (alert, by) -> {
          AlertRights.require(call, AlertMove.SHELVE, alert.kind());
          return AlertActions.shelve(alert, by, reason, by.atMicros() + micros);
        });
  }

  private AlertView unshelve(Call call) {
    String word = word(call);
    return done(call, (alert, by) -> AlertActions.unshelve(alert, by, word));
  }

  private AlertView takeOut(Call call) {
    String reason = call.body(Reason.class).needed();
    return done(
        call,
        (alert, by) -> {
          AlertRights.require(call, AlertMove.TAKE_OUT_OF_SERVICE, alert.kind());
          return AlertActions.takeOutOfService(alert, by, text("reason", reason));
        });
  }

  private AlertView putBack(Call call) {
    String word = word(call);
    return done(call, (alert, by) -> AlertActions.putBackInService(alert, by, word));
  }

  static String word(Call call) {
    return text("word", call.body(WordForm.class).word());
  }

  static String text(String field, @Nullable String given) {
    if (given == null || given.isBlank()) {
      return "";
    }
    Faults faults = new Faults();
    faults.text(field, given);
    faults.refuse();
    return given.strip();
  }

  /** Where the alert is as the caller knows it; else the refusal holds how it is now. */
  private AlertView done(Call call, Move move) {
    Alert alert = AlertRoutes.find(alerts, call);
    if (!call.means(String.valueOf(alert.revision()))) {
      throw changedMeanwhile(call, alert.id());
    }
    Recorded by = new Recorded(views.nowMicros(), call.by());
    AlertEvent event = move.on(alert, by);
    try {
      Alert after = alerts.add(event).alert();
      feed.look();
      return view(call, after);
    } catch (Stale e) {
      throw changedMeanwhile(call, alert.id());
    }
  }

  private Refusal changedMeanwhile(Call call, long id) {
    Alert present = alerts.find(id).orElseThrow();
    return Refusal.changedMeanwhile(
        "This alert changed meanwhile. Look at what it is now, then go on.", view(call, present));
  }

  private AlertView view(Call call, Alert alert) {
    return views.of(call, alert);
  }
}
