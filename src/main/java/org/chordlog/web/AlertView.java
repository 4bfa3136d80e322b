package org.chordlog.web;

import com.fasterxml.jackson.annotation.JsonPropertyDescription;
import java.util.List;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertPriority;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.notify.rule.AlertMove;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Progress;
import org.chordlog.store.Outbox.State;
import org.chordlog.verdict.AlertStateWords;
import org.chordlog.verdict.AlertStatement;
import org.chordlog.verdict.AlertWords;
import org.chordlog.verdict.Statement;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** An alert as people see it. */
record AlertView(
    long id,
    @JsonPropertyDescription("counts what happened to it; for If-Match") int revision,
    AlertKind kind,
    AlertPriority priority,
    @JsonPropertyDescription("how urgent it is, in a word or two") String urgency,
    AlertSubject.Type about,
    @JsonPropertyDescription("machine, station or workshop computer; empty for the service")
        String subject,
    @JsonPropertyDescription("the same in words") String where,
    @JsonPropertyDescription("what is wrong, on what evidence, what to do") Statement statement,
    @JsonPropertyDescription("what most often makes it so") String cause,
    @JsonPropertyDescription("what comes of it where nobody acts") String consequence,
    @JsonPropertyDescription("who is told, in the order of escalation") List<String> told,
    AlertState state,
    @JsonPropertyDescription("the state in words, with who brought it there") String stateWords,
    @JsonPropertyDescription("what it is about is still so") boolean present,
    @JsonPropertyDescription("it came and went too often to be told each time") boolean unsteady,
    String since,
    @JsonPropertyDescription("by when somebody must act") String actBy,
    @JsonPropertyDescription("that time has passed and it still waits") boolean overdue,
    String changedAt,
    @JsonPropertyDescription("empty for nobody") String assignedTo,
    @Nullable String shelvedUntil,
    @Nullable Long firstReadingId,
    @Nullable Long lastReadingId,
    @JsonPropertyDescription("what people said of it last; empty for nothing") String note,
    @JsonPropertyDescription("to whom it could not be told so far") List<UntoldView> untold,
    @JsonPropertyDescription("what can be done to it now by who asks") List<MoveView> moves) {

  /**
   * As the caller sees it, with what they may do; {@code events} of this alert, in order, and the
   * deliveries about it that did not succeed.
   */
  static AlertView of(
      Call call, Alert alert, List<AlertEvent> events, List<UntoldView> untold, long nowMicros) {
    AlertKind kind = alert.kind();
    AlertStatus status = alert.status();
    long actBy = alert.actByMicros(events);
    return new AlertView(
        alert.id(),
        alert.revision(),
        kind,
        alert.treatedAs().priority(),
        AlertWords.of(alert.treatedAs().priority()),
        alert.subject().type(),
        alert.subject().name(),
        AlertWords.of(alert.subject()),
        new AlertStatement(alert).statement(),
        AlertWords.cause(kind),
        AlertWords.consequence(alert.treatedAs()),
        kind.audiences().stream().map(AlertWords::of).toList(),
        alert.state(),
        AlertStateWords.of(alert, events),
        status.present(),
        status.unsteady(),
        Times.iso(status.sinceMicros()),
        Times.iso(actBy),
        alert.state().waits() && actBy < nowMicros,
        Times.iso(status.changedMicros()),
        alert.assignedTo(),
        alert.state() == AlertState.SHELVED ? Times.iso(status.shelvedUntilMicros()) : null,
        reading(alert.evidence().firstReadingId()),
        reading(alert.evidence().lastReadingId()),
        note(events),
        untold,
        AlertMove.possible(alert).stream()
            .filter(move -> AlertRights.may(call, move, kind))
            .map(MoveView::of)
            .toList());
  }

  private static @Nullable Long reading(long id) {
    return id == 0 ? null : (Long) id;
  }

  private static String note(List<AlertEvent> events) {
    return events.stream()
        .map(AlertEvent::note)
        .filter(each -> !each.isEmpty())
        .reduce((first, later) -> later)
        .orElse("");
  }

  /** Somebody who could not be told. */
  record UntoldView(
      @JsonPropertyDescription("a mail address, or the name of a webhook") String to,
      @JsonPropertyDescription("since when it has been tried") String since,
      @JsonPropertyDescription("when it is tried again; null: no longer") @Nullable String nextTry,
      String problem) {
    static UntoldView of(Delivery delivery) {
      Progress progress = delivery.progress();
      return new UntoldView(
          delivery.to().name(),
          Times.iso(delivery.madeMicros()),
          progress.state() == State.FAILED ? null : Times.iso(progress.atMicros()),
          progress.problem());
    }
  }

  /** Something that can be done to an alert, with the words of its button. */
  record MoveView(AlertMove move, String words) {
    static MoveView of(AlertMove move) {
      return new MoveView(move, move.words());
    }
  }

  /** Something that happened to an alert. */
  record Happened(
      long id,
      AlertEvent.What what,
      @JsonPropertyDescription("the same in words") String words,
      AlertState state,
      @JsonPropertyDescription("the state after it, in words") String stateWords,
      String at,
      String by,
      String note,
      String assignedTo,
      @Nullable String shelvedUntil) {
    static Happened of(AlertEvent event) {
      AlertStatus status = event.alert().status();
      return new Happened(
          event.id(),
          event.what(),
          AlertWords.of(event.what()),
          event.to(),
          AlertWords.of(event.to()),
          Times.iso(event.atMicros()),
          event.by(),
          event.note(),
          event.alert().assignedTo(),
          event.to() == AlertState.SHELVED ? Times.iso(status.shelvedUntilMicros()) : null);
    }
  }
}
