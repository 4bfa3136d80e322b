package org.chordlog.notify.rule;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashSet;
import java.util.Set;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every pair of state and input: a rule that changes shows here. */
final class StateTableTest {
  /** One row a state, for an alert that latches; one column an input; "-" where nothing happens. */
  private static final String TABLE =
      """
      state                   APPEARS               WORSENS               DISAPPEARS                       SHELF_ENDS                     REPAIRED                         REPLACED        ACKNOWLEDGE               SHELVE          UNSHELVE                       ASSIGN                           TAKE_OUT_OF_SERVICE           PUT_BACK_IN_SERVICE
      NORMAL                  UNACKNOWLEDGED/RAISED UNACKNOWLEDGED/RAISED -                                -                              -                                -               -                         -               -                              -                                -                             -
      UNACKNOWLEDGED          -                     UNACKNOWLEDGED/AGAIN  RETURNED_UNACKNOWLEDGED/RETURNED -                              RETURNED_UNACKNOWLEDGED/RETURNED NORMAL/REPLACED ACKNOWLEDGED/ACKNOWLEDGED SHELVED/SHELVED -                              UNACKNOWLEDGED/ASSIGNED          OUT_OF_SERVICE/OUT_OF_SERVICE -
      ACKNOWLEDGED            -                     UNACKNOWLEDGED/AGAIN  NORMAL/RETURNED                  -                              NORMAL/RETURNED                  NORMAL/REPLACED -                         SHELVED/SHELVED -                              ACKNOWLEDGED/ASSIGNED            OUT_OF_SERVICE/OUT_OF_SERVICE -
      RETURNED_UNACKNOWLEDGED UNACKNOWLEDGED/AGAIN  UNACKNOWLEDGED/AGAIN  -                                -                              -                                NORMAL/REPLACED NORMAL/ACKNOWLEDGED       -               -                              RETURNED_UNACKNOWLEDGED/ASSIGNED OUT_OF_SERVICE/OUT_OF_SERVICE -
      SHELVED                 -                     UNACKNOWLEDGED/AGAIN  SHELVED/RETURNED                 UNACKNOWLEDGED/BACK_FROM_SHELF SHELVED/RETURNED                 NORMAL/REPLACED -                         SHELVED/SHELVED UNACKNOWLEDGED/BACK_FROM_SHELF SHELVED/ASSIGNED                 OUT_OF_SERVICE/OUT_OF_SERVICE -
      OUT_OF_SERVICE          -                     -                     -                                -                              NORMAL/BACK_IN_SERVICE           -               -                         -               -                              OUT_OF_SERVICE/ASSIGNED          -                             NORMAL/BACK_IN_SERVICE
      """;

  private static Alert alert(AlertKey key, AlertState state, boolean present, boolean unsteady) {
    AlertStatus raised = AlertStatus.raised(5, unsteady).withPresent(present);
    AlertStatus status = state == AlertState.SHELVED ? raised.shelved(99, 5) : raised.in(state, 5);
    return Alert.raised(key, status, AlertEvidence.NONE).withId(1);
  }

  private static Alert creep(AlertState state, boolean present) {
    return alert(AlertKey.machine(AlertKind.ROLLER_CREEPS, "M"), state, present, false);
  }

  private static String said(StateTable.@org.jspecify.annotations.Nullable Step step) {
    return step == null ? "-" : step.to() + "/" + step.what();
  }

  @Test
  void everyStateAnswersEveryInputAsTheTableSays() {
    String[] rows = TABLE.strip().split("\n", -1);
    String[] inputs = rows[0].strip().split(" +", -1);
    Set<String> seen = new HashSet<>();
    for (int row = 1; row < rows.length; row++) {
      String[] cells = rows[row].strip().split(" +", -1);
      AlertState state = AlertState.valueOf(cells[0]);
      boolean present = state != AlertState.RETURNED_UNACKNOWLEDGED && state != AlertState.NORMAL;
      for (int i = 1; i < cells.length; i++) {
        AlertInput input = AlertInput.valueOf(inputs[i]);
        assertEquals(
            cells[i], said(StateTable.step(creep(state, present), input)), state + " " + input);
        seen.add(state + " " + input);
      }
    }
    assertEquals(AlertState.values().length * AlertInput.values().length, seen.size());
  }

  /** Where the answer depends on more than the state. */
  @ParameterizedTest
  @CsvSource({
    // kind, subject, state, present, unsteady, input, answer
    "LINK_LOST, UNACKNOWLEDGED, true, false, DISAPPEARS, NORMAL/RETURNED",
    "LINK_LOST, UNACKNOWLEDGED, true, true, DISAPPEARS, RETURNED_UNACKNOWLEDGED/RETURNED",
    "ROLLER_CREEPS, SHELVED, false, false, APPEARS, SHELVED/AGAIN",
    "ROLLER_CREEPS, SHELVED, false, false, DISAPPEARS, -",
    "ROLLER_CREEPS, SHELVED, false, false, SHELF_ENDS, NORMAL/BACK_FROM_SHELF",
    "ROLLER_CREEPS, SHELVED, false, false, UNSHELVE, NORMAL/BACK_FROM_SHELF",
    "DISK_LOW, UNACKNOWLEDGED, true, false, TAKE_OUT_OF_SERVICE, -",
    "LINK_LOST, UNACKNOWLEDGED, true, false, TAKE_OUT_OF_SERVICE, OUT_OF_SERVICE/OUT_OF_SERVICE",
  })
  void latchingPresenceAndSubjectDecideTheRest(
      AlertKind kind,
      AlertState state,
      boolean present,
      boolean unsteady,
      AlertInput input,
      String answer) {
    AlertKey key =
        switch (kind.about()) {
          case MACHINE -> AlertKey.machine(kind, "M");
          case STATION -> AlertKey.station(kind, "A");
          case SERVICE -> AlertKey.service(kind);
          case EDGE -> AlertKey.edge(kind, "hall 1");
        };
    assertEquals(answer, said(StateTable.step(alert(key, state, present, unsteady), input)));
  }
}
