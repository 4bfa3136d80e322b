package org.chordlog.measure;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** An event of a job taken back because it was recorded by mistake; append-only. */
public record EventWithdrawal(long id, long eventId, String reason, long atMicros, String by) {
  public EventWithdrawal {
    Check.text("reason", reason);
  }

  /** Numbers of the events that those take back. */
  public static Set<Long> events(Collection<EventWithdrawal> withdrawals) {
    return withdrawals.stream().map(EventWithdrawal::eventId).collect(Collectors.toSet());
  }

  /** Those of the events that are not taken back. */
  public static List<JobEvent> counting(
      List<JobEvent> events, Collection<EventWithdrawal> withdrawals) {
    Set<Long> takenBack = events(withdrawals);
    return events.stream().filter(each -> !takenBack.contains(each.id())).toList();
  }
}
