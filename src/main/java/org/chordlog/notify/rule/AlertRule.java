package org.chordlog.notify.rule;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.notify.rule.StateTable.Step;
import org.jspecify.annotations.Nullable;

/** What the service does to alerts, as the event to store; empty where nothing happens. */
public final class AlertRule {
  /** What comes and goes more often within {@link #STEADY_MICROS} is unsteady. */
  static final int MOST_CHANGES = 3;

  /** So long it must be quiet to be steady again: ten minutes. */
  static final long STEADY_MICROS = 600_000_000L;

  private AlertRule() {}

  /**
   * Something is so. {@code open}: the alert of its key, null where none is open; {@code recent}:
   * the events of that key in the last ten minutes.
   */
  public static Optional<AlertEvent> appears(
      Found found, @Nullable Alert open, List<AlertEvent> recent, long atMicros) {
    boolean unsteady = changes(recent) >= MOST_CHANGES;
    if (open == null) {
      AlertStatus status = AlertStatus.raised(atMicros, unsteady);
      Alert raised = Alert.raised(found.key(), status, found.evidence());
      return Optional.of(event(What.RAISED, AlertState.NORMAL, raised, atMicros));
    }
    AlertInput input = found.worseThan(open) ? AlertInput.WORSENS : AlertInput.APPEARS;
    return step(open, input, atMicros, true).map(event -> told(event, found.evidence(), unsteady));
  }

  private static long changes(List<AlertEvent> recent) {
    return recent.stream()
        .filter(each -> each.what() == What.RAISED || each.what() == What.AGAIN)
        .count();
  }

  private static AlertEvent told(AlertEvent event, AlertEvidence evidence, boolean unsteady) {
    Alert alert = event.alert();
    boolean still = unsteady || alert.status().unsteady();
    Alert after =
        new Alert(
            alert.id(),
            alert.revision(),
            alert.key(),
            alert.status().withUnsteady(still),
            evidence,
            alert.assignedTo());
    return event(event.what(), event.from(), after, event.atMicros());
  }

  /** It is no longer so. */
  public static Optional<AlertEvent> disappears(Alert open, long atMicros) {
    return step(open, AlertInput.DISAPPEARS, atMicros, false);
  }

  /** An alert of another kind, named in words, says the same from now on. */
  public static Optional<AlertEvent> replaced(Alert open, String by, long atMicros) {
    return step(open, AlertInput.REPLACED, atMicros, false)
        .map(each -> new AlertEvent(each.what(), each.from(), each.alert(), each.recorded(), by));
  }

  /** Its machine was set up or repaired. */
  public static Optional<AlertEvent> repaired(Alert open, long atMicros) {
    return step(open, AlertInput.REPAIRED, atMicros, false);
  }

  /** Ends the time on the shelf, where it is over. */
  public static Optional<AlertEvent> shelfEnds(Alert open, long atMicros) {
    long until = open.status().shelvedUntilMicros();
    return until == 0 || until > atMicros
        ? Optional.empty()
        : step(open, AlertInput.SHELF_ENDS, atMicros, open.status().present());
  }

  private static Optional<AlertEvent> step(
      Alert open, AlertInput input, long atMicros, boolean present) {
    Step step = StateTable.step(open, input);
    if (step == null) {
      return Optional.empty();
    }
    AlertStatus before = open.status();
    AlertStatus after = step.to() == before.state() ? before : before.in(step.to(), atMicros);
    Alert next = open.next(after.withPresent(present));
    return Optional.of(event(step.what(), before.state(), next, atMicros));
  }

  private static AlertEvent event(What what, AlertState from, Alert after, long atMicros) {
    return new AlertEvent(what, from, after, new Recorded(atMicros, AlertEvent.SERVICE), "");
  }
}
