package org.chordlog.notify;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.notify.rule.AlertRule;
import org.chordlog.notify.rule.Found;
import org.chordlog.store.Alerts;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Writes what the rules say into the store; the watch's thread only. */
record AlertBook(Alerts alerts) {
  private static final Logger LOG = LoggerFactory.getLogger(AlertBook.class);
  private static final long RECENT_MICROS = 600_000_000L;

  /**
   * Raises what appeared and ends what has disappeared, in one commit with the cursors that move;
   * nothing at all where somebody changed one of the alerts meanwhile, so that the next round does
   * it.
   */
  void tell(
      Collection<Found> appeared,
      Collection<Alert> gone,
      Map<String, Long> cursors,
      long atMicros) {
    write(events(appeared, gone, atMicros), cursors);
  }

  /** The events of what appeared and what disappeared; not written yet. */
  List<AlertEvent> events(Collection<Found> appeared, Collection<Alert> gone, long atMicros) {
    List<AlertEvent> events = new ArrayList<>();
    appeared.forEach(each -> appears(each, atMicros).ifPresent(events::add));
    gone.forEach(each -> AlertRule.disappears(each, atMicros).ifPresent(events::add));
    return events;
  }

  /** What many rounds find again asks the store for its past only where something happens. */
  private Optional<AlertEvent> appears(Found found, long atMicros) {
    Alert open = alerts.open(found.key()).orElse(null);
    return AlertRule.appears(found, open, List.of(), atMicros).isEmpty()
        ? Optional.empty()
        : AlertRule.appears(
            found, open, alerts.events(found.key(), atMicros - RECENT_MICROS), atMicros);
  }

  /** The events in one commit with the cursors. */
  void write(List<AlertEvent> events, Map<String, Long> cursors) {
    if (events.isEmpty() && cursors.isEmpty()) {
      return;
    }
    try {
      alerts.add(events, cursors).forEach(AlertBook::log);
    } catch (Stale e) {
      LOG.debug("left to the next round: {}", e.getMessage());
    }
  }

  private static void log(AlertEvent event) {
    LOG.atInfo()
        .addKeyValue("alert", event.alert().id())
        .addKeyValue("kind", event.alert().kind())
        .addKeyValue("subject", event.alert().subject().name())
        .addKeyValue("state", event.to())
        .log("alert {}", event.what().name().toLowerCase(Locale.ROOT));
  }

  /** Brings back what was put aside until now. */
  void shelvesEnd(long atMicros) {
    for (Alert each : alerts.open()) {
      AlertRule.shelfEnds(each, atMicros).ifPresent(event -> write(List.of(event), Map.of()));
    }
  }
}
