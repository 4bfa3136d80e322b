package org.chordlog.notify.send;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.alert.AlertEvent;

/**
 * That an alert asks for somebody: the event with which it began to, and when. It asks once until
 * somebody took it on; one that goes away and comes back meanwhile does not ask again.
 */
record Appeal(long eventId, Instant since) {
  /** The newest among the events of one alert, by id. */
  static Optional<Appeal> newest(List<AlertEvent> events) {
    return events.stream()
        .filter(each -> each.to().waits() && !each.from().waits())
        .reduce((before, next) -> next)
        .map(each -> new Appeal(each.id(), Micros.instant(each.atMicros())));
  }
}
