package org.chordlog.notify.rule;

import java.time.Duration;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.notify.rule.StateTable.Step;

/**
 * What people do to an alert, as the event to store. {@link Stale} where its state does not allow
 * it, {@link BadInput} for a reason that is missing or a time out of bounds.
 */
public final class AlertActions {
  /** Nothing is put aside for longer. */
  public static final Duration MOST_SHELVED = Duration.ofHours(24);

  private AlertActions() {}

  /** Somebody knows; what went away by itself is over then. */
  public static AlertEvent acknowledge(Alert alert, Recorded by, String word) {
    return step(alert, AlertInput.ACKNOWLEDGE, by, word);
  }

  /** Puts it aside until then, at most {@link #MOST_SHELVED} from now. */
  public static AlertEvent shelve(Alert alert, Recorded by, String reason, long untilMicros) {
    Check.text("reason", reason);
    long most = by.atMicros() + MOST_SHELVED.toNanos() / 1_000;
    if (untilMicros <= by.atMicros() || untilMicros > most) {
      throw new BadInput(
          "until",
          untilMicros,
          "is not a time to put it aside until",
          "later than now, at most " + MOST_SHELVED.toHours() + " hours from now");
    }
    Step unused = required(alert, AlertInput.SHELVE);
    AlertStatus status = alert.status().shelved(untilMicros, by.atMicros());
    return new AlertEvent(What.SHELVED, alert.state(), alert.next(status), by, reason);
  }

  /** Ends the time on the shelf early. */
  public static AlertEvent unshelve(Alert alert, Recorded by, String word) {
    return step(alert, AlertInput.UNSHELVE, by, word);
  }

  /** Whose it is from now on; an empty text takes it from whoever had it. */
  public static AlertEvent assign(Alert alert, Recorded by, String to, String word) {
    Step unused = required(alert, AlertInput.ASSIGN);
    Alert after = alert.next(alert.status()).withAssigned(to);
    return new AlertEvent(What.ASSIGNED, alert.state(), after, by, word);
  }

  /** Its machine or station is under repair until it is set up again, or somebody says so. */
  public static AlertEvent takeOutOfService(Alert alert, Recorded by, String reason) {
    return step(alert, AlertInput.TAKE_OUT_OF_SERVICE, by, Check.text("reason", reason));
  }

  /** The repair is over; what is still wrong is raised anew. */
  public static AlertEvent putBackInService(Alert alert, Recorded by, String word) {
    return step(alert, AlertInput.PUT_BACK_IN_SERVICE, by, word);
  }

  private static AlertEvent step(Alert alert, AlertInput input, Recorded by, String note) {
    Step step = required(alert, input);
    Alert after = alert.next(alert.status().in(step.to(), by.atMicros()));
    return new AlertEvent(step.what(), alert.state(), after, by, note);
  }

  private static Step required(Alert alert, AlertInput input) {
    Step step = StateTable.step(alert, input);
    if (step == null) {
      throw new Stale(refusal(alert));
    }
    return step;
  }

  private static String refusal(Alert alert) {
    AlertState state = alert.state();
    return switch (state) {
      case NORMAL -> "This alert is over.";
      case UNACKNOWLEDGED -> "This alert waits for somebody; it can't be changed in that way.";
      case ACKNOWLEDGED -> "Somebody has acknowledged this alert already.";
      case RETURNED_UNACKNOWLEDGED -> "It went away by itself: acknowledge it.";
      case SHELVED -> "This alert is put aside; end that first.";
      case OUT_OF_SERVICE -> "This alert is out of service; put it back first.";
    };
  }
}
