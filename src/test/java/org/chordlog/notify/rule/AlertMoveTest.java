package org.chordlog.notify.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.EnumSet;
import java.util.Set;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is offered to people is what they can do, in every state. */
final class AlertMoveTest {
  private static final Recorded BY = new Recorded(100, "Ann");

  private static Alert in(AlertState state, AlertKey key) {
    AlertStatus raised = AlertStatus.raised(5, false);
    AlertStatus status = state == AlertState.SHELVED ? raised.shelved(500, 6) : raised.in(state, 6);
    return Alert.raised(key, status, AlertEvidence.NONE).withId(1);
  }

  private static AlertEvent done(AlertMove move, Alert alert) {
    return switch (move) {
      case ACKNOWLEDGE -> AlertActions.acknowledge(alert, BY, "");
      case ASSIGN -> AlertActions.assign(alert, BY, "Bo", "");
      case SHELVE -> AlertActions.shelve(alert, BY, "trial", 200);
      case UNSHELVE -> AlertActions.unshelve(alert, BY, "");
      case TAKE_OUT_OF_SERVICE -> AlertActions.takeOutOfService(alert, BY, "bearing");
      case PUT_BACK_IN_SERVICE -> AlertActions.putBackInService(alert, BY, "");
    };
  }

  private static Set<AlertMove> accepted(Alert alert) {
    Set<AlertMove> accepted = EnumSet.noneOf(AlertMove.class);
    for (AlertMove move : AlertMove.values()) {
      try {
        assertEquals(alert.revision() + 1, done(move, alert).alert().revision());
        accepted.add(move);
      } catch (Stale refused) {
        assertFalse(accepted.contains(move), refused::toString);
      }
    }
    return accepted;
  }

  @ParameterizedTest
  @EnumSource
  void whatIsOfferedIsAcceptedAndNothingElse(AlertState state) {
    Alert machine = in(state, AlertKey.machine(AlertKind.ROLLER_CREEPS, "M"));
    Alert service = in(state, AlertKey.service(AlertKind.DISK_LOW));
    assertEquals(accepted(machine), AlertMove.possible(machine));
    assertEquals(accepted(service), AlertMove.possible(service));
  }
}
