package org.chordlog.monitor;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.JobEvent;

/** Events that wait for the readings before them, in the order in which they happened. */
final class PendingEvents {
  private static final Comparator<JobEvent> ORDER =
      Comparator.comparingLong(JobEvent::afterReadingId).thenComparingLong(JobEvent::id);

  private final Deque<JobEvent> waiting = new ArrayDeque<>();

  void add(List<JobEvent> events) {
    List<JobEvent> sorted = Stream.concat(waiting.stream(), events.stream()).sorted(ORDER).toList();
    waiting.clear();
    waiting.addAll(sorted);
  }

  /** Forgets events that were taken back before their reading came. */
  void remove(List<JobEvent> takenBack) {
    Set<Long> ids = takenBack.stream().map(JobEvent::id).collect(Collectors.toSet());
    waiting.removeIf(each -> ids.contains(each.id()));
  }

  /** Tells of the events after a reading up to that one. */
  void tell(long afterReadingId, Consumer<JobEvent> listener) {
    while (!waiting.isEmpty() && waiting.getFirst().afterReadingId() <= afterReadingId) {
      listener.accept(waiting.removeFirst());
    }
  }

  boolean isEmpty() {
    return waiting.isEmpty();
  }

  /** The last reading that the events leave as it was. */
  static long earliest(List<JobEvent> events) {
    return events.stream().mapToLong(JobEvent::afterReadingId).min().orElse(Long.MAX_VALUE);
  }
}
