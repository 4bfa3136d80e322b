package org.chordlog.notify.send;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertState;

/**
 * That an alert asks for somebody: the event with which it began to, and when. It asks once until
 * somebody took it on, and again where it got worse meanwhile; one that goes away and comes back
 * does not ask again.
 */
record Appeal(long eventId, Instant since) {
  /** The newest among the events of one alert, by id. */
  static Optional<Appeal> newest(List<AlertEvent> events) {
    return events.stream()
        .filter(each -> each.to().waits() && (!each.from().waits() || gotWorse(each)))
        .reduce((before, next) -> next)
        .map(each -> new Appeal(each.id(), Micros.instant(each.atMicros())));
  }

  private static boolean gotWorse(AlertEvent event) {
    return event.what() == AlertEvent.What.AGAIN && event.from() == AlertState.UNACKNOWLEDGED;
  }
}
