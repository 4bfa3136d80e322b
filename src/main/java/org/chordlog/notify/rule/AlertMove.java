package org.chordlog.notify.rule;

import java.util.EnumSet;
import java.util.Set;
import org.chordlog.measure.alert.Alert;

/** What a person can do to an alert. */
public enum AlertMove {
  ACKNOWLEDGE(AlertInput.ACKNOWLEDGE, "Acknowledge"),
  UNSHELVE(AlertInput.UNSHELVE, "Take it up again"),
  PUT_BACK_IN_SERVICE(AlertInput.PUT_BACK_IN_SERVICE, "Back in service"),
  ASSIGN(AlertInput.ASSIGN, "Assign"),
  SHELVE(AlertInput.SHELVE, "Put aside"),
  TAKE_OUT_OF_SERVICE(AlertInput.TAKE_OUT_OF_SERVICE, "Under repair");

  private final AlertInput input;
  private final String words;

  AlertMove(AlertInput input, String words) {
    this.input = input;
    this.words = words;
  }

  /** As a button says it. */
  public String words() {
    return words;
  }

  /** Those that its present state allows. */
  public static Set<AlertMove> possible(Alert alert) {
    Set<AlertMove> all = EnumSet.allOf(AlertMove.class);
    all.removeIf(each -> StateTable.step(alert, each.input) == null);
    return all;
  }
}
