package org.chordlog.verdict;

import java.util.List;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertState;

/** Where an alert is, said with the name of who brought it there. */
public final class AlertStateWords {
  private AlertStateWords() {}

  /** {@code events} of the alert in order; a time on the shelf is said beside it. */
  public static String of(Alert alert, List<AlertEvent> events) {
    String by = by(alert.state(), events);
    return switch (alert.state()) {
      case ACKNOWLEDGED -> by.isEmpty() ? AlertWords.of(alert.state()) : "Seen by " + by;
      case SHELVED -> by.isEmpty() ? AlertWords.of(alert.state()) : "Put aside by " + by;
      case OUT_OF_SERVICE -> by.isEmpty() ? "Under repair" : "Under repair, says " + by;
      case NORMAL, UNACKNOWLEDGED, RETURNED_UNACKNOWLEDGED -> AlertWords.of(alert.state());
    };
  }

  /** Who brought it into that state last; empty where that is not among the events. */
  private static String by(AlertState state, List<AlertEvent> events) {
    return events.stream()
        .filter(each -> each.to() == state && each.what() != AlertEvent.What.ASSIGNED)
        .filter(each -> !each.by().equals(AlertEvent.SERVICE))
        .reduce((first, later) -> later)
        .map(AlertEvent::by)
        .orElse("");
  }
}
