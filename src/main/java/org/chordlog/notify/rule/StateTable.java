package org.chordlog.notify.rule;

import static org.chordlog.measure.alert.AlertState.ACKNOWLEDGED;
import static org.chordlog.measure.alert.AlertState.NORMAL;
import static org.chordlog.measure.alert.AlertState.OUT_OF_SERVICE;
import static org.chordlog.measure.alert.AlertState.RETURNED_UNACKNOWLEDGED;
import static org.chordlog.measure.alert.AlertState.SHELVED;
import static org.chordlog.measure.alert.AlertState.UNACKNOWLEDGED;

import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent.What;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertSubject;
import org.jspecify.annotations.Nullable;

/**
 * The states of an alert and what leads from one to the next, after ISA-18.2 with latching: what
 * went away by itself before anybody acknowledged it still asks for a word.
 */
final class StateTable {
  /** The next state, and what the event is called. */
  record Step(AlertState to, What what) {}

  private StateTable() {}

  /** Null where nothing happens; what a person asks for is refused then. */
  static @Nullable Step step(Alert alert, AlertInput input) {
    return switch (input) {
      case APPEARS -> appears(alert);
      case WORSENS -> worsens(alert.state());
      case DISAPPEARS -> disappears(alert);
      case REPAIRED ->
          alert.state() == OUT_OF_SERVICE
              ? new Step(NORMAL, What.BACK_IN_SERVICE)
              : disappears(alert);
      case REPLACED ->
          alert.open() && alert.state() != OUT_OF_SERVICE ? new Step(NORMAL, What.REPLACED) : null;
      case SHELF_ENDS, UNSHELVE -> alert.state() == SHELVED ? offTheShelf(alert) : null;
      case ACKNOWLEDGE -> acknowledge(alert.state());
      case SHELVE -> shelve(alert.state());
      case ASSIGN -> alert.open() ? new Step(alert.state(), What.ASSIGNED) : null;
      case TAKE_OUT_OF_SERVICE -> takeOut(alert);
      case PUT_BACK_IN_SERVICE ->
          alert.state() == OUT_OF_SERVICE ? new Step(NORMAL, What.BACK_IN_SERVICE) : null;
    };
  }

  private static @Nullable Step appears(Alert alert) {
    return switch (alert.state()) {
      case NORMAL -> new Step(UNACKNOWLEDGED, What.RAISED);
      case RETURNED_UNACKNOWLEDGED -> new Step(UNACKNOWLEDGED, What.AGAIN);
      case SHELVED -> alert.status().present() ? null : new Step(SHELVED, What.AGAIN);
      case UNACKNOWLEDGED, ACKNOWLEDGED, OUT_OF_SERVICE -> null;
    };
  }

  /** What got worse than what was put aside comes back at once. */
  private static @Nullable Step worsens(AlertState from) {
    return switch (from) {
      case NORMAL -> new Step(UNACKNOWLEDGED, What.RAISED);
      case UNACKNOWLEDGED, ACKNOWLEDGED, RETURNED_UNACKNOWLEDGED, SHELVED ->
          new Step(UNACKNOWLEDGED, What.AGAIN);
      case OUT_OF_SERVICE -> null;
    };
  }

  private static @Nullable Step disappears(Alert alert) {
    return switch (alert.state()) {
      case UNACKNOWLEDGED ->
          new Step(latched(alert) ? RETURNED_UNACKNOWLEDGED : NORMAL, What.RETURNED);
      case ACKNOWLEDGED -> new Step(NORMAL, What.RETURNED);
      case SHELVED -> alert.status().present() ? new Step(SHELVED, What.RETURNED) : null;
      case NORMAL, RETURNED_UNACKNOWLEDGED, OUT_OF_SERVICE -> null;
    };
  }

  private static boolean latched(Alert alert) {
    return alert.kind().latches() || alert.status().unsteady();
  }

  private static Step offTheShelf(Alert alert) {
    return new Step(alert.status().present() ? UNACKNOWLEDGED : NORMAL, What.BACK_FROM_SHELF);
  }

  private static @Nullable Step acknowledge(AlertState from) {
    return switch (from) {
      case UNACKNOWLEDGED -> new Step(ACKNOWLEDGED, What.ACKNOWLEDGED);
      case RETURNED_UNACKNOWLEDGED -> new Step(NORMAL, What.ACKNOWLEDGED);
      case NORMAL, ACKNOWLEDGED, SHELVED, OUT_OF_SERVICE -> null;
    };
  }

  private static @Nullable Step shelve(AlertState from) {
    return switch (from) {
      case UNACKNOWLEDGED, ACKNOWLEDGED, SHELVED -> new Step(SHELVED, What.SHELVED);
      case NORMAL, RETURNED_UNACKNOWLEDGED, OUT_OF_SERVICE -> null;
    };
  }

  /** The service can't be under repair: it is what watches. */
  private static @Nullable Step takeOut(Alert alert) {
    boolean possible = alert.subject().type() != AlertSubject.Type.SERVICE;
    return switch (alert.state()) {
      case UNACKNOWLEDGED, ACKNOWLEDGED, RETURNED_UNACKNOWLEDGED, SHELVED ->
          possible ? new Step(OUT_OF_SERVICE, What.OUT_OF_SERVICE) : null;
      case NORMAL, OUT_OF_SERVICE -> null;
    };
  }
}
