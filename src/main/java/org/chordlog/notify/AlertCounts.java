package org.chordlog.notify;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.store.Alerts;

/**
 * Alerts that are not over, by state (every state but {@link AlertState#NORMAL} is there), how
 * often one was raised since the store began, and when the watch last looked (0: not yet), with
 * whether it does so as often as it should.
 */
public record AlertCounts(
    Map<AlertState, Integer> open, long raised, long lastRoundMicros, boolean watching) {
  public AlertCounts {
    open = Map.copyOf(open);
  }

  static AlertCounts of(Alerts alerts, long lastRoundMicros, boolean watching) {
    Map<AlertState, Integer> open = new EnumMap<>(AlertState.class);
    for (AlertState state : AlertState.values()) {
      if (state != AlertState.NORMAL) {
        open.put(state, 0);
      }
    }
    List<Alert> all = alerts.open();
    all.forEach(each -> open.merge(each.state(), 1, Integer::sum));
    return new AlertCounts(open, alerts.raisedSince(0), lastRoundMicros, watching);
  }

  public int in(AlertState state) {
    return open.getOrDefault(state, 0);
  }

  /** Those that wait for somebody. */
  public int waiting() {
    return open.entrySet().stream()
        .filter(each -> each.getKey().waits())
        .mapToInt(Map.Entry::getValue)
        .sum();
  }
}
