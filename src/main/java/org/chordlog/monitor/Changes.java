package org.chordlog.monitor;

import java.util.List;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;

/**
 * What was recorded since the statistics were last brought up to date: events that count,
 * exclusions and withdrawals, each in the order of its ids; {@code takenBack} are the events
 * withdrawn.
 */
record Changes(
    List<JobEvent> events,
    List<Exclusion> exclusions,
    List<EventWithdrawal> withdrawals,
    List<JobEvent> takenBack) {
  /**
   * The newest reading that none of them concerns. A state that includes the reading before a
   * withdrawn event may include the event too.
   */
  long earliest() {
    long exclusion =
        exclusions.stream().mapToLong(each -> each.readingId() - 1).min().orElse(Long.MAX_VALUE);
    long undone =
        takenBack.stream()
            .mapToLong(each -> each.afterReadingId() - 1)
            .min()
            .orElse(Long.MAX_VALUE);
    return Math.min(exclusion, Math.min(PendingEvents.earliest(events), undone));
  }

  int count() {
    return events.size() + exclusions.size() + withdrawals.size();
  }
}
