package org.chordlog.store;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;

/** Where events stand on a machine, over all its jobs: told late, they stand where they were. */
public final class EventPlaces {
  private final Readings readings;
  private final String machine;

  public EventPlaces(Readings readings, String machine) {
    this.readings = readings;
    this.machine = machine;
  }

  /** One before the first reading of its job comes after what other jobs had measured by then. */
  public JobEvent placed(JobEvent event) {
    if (event.afterReadingId() > 0) {
      return event;
    }
    long since = readings.firstOfMachine(machine, event.atMicros()).orElse(Long.MAX_VALUE);
    return event.after(Math.min(firstOfJob(event.jobId()), since) - 1);
  }

  /**
   * The events as they are, in the order in which they happened; of those before the first reading
   * of their job none comes before what other jobs measured until then: the place of each would be
   * looked for in all jobs.
   */
  public List<JobEvent> inOrder(List<JobEvent> events) {
    Map<Long, Long> first = new HashMap<>();
    ToLongFunction<JobEvent> after =
        each ->
            each.afterReadingId() > 0
                ? each.afterReadingId()
                : first.computeIfAbsent(each.jobId(), this::firstOfJob) - 1;
    return events.stream()
        .sorted(Comparator.comparingLong(after).thenComparingLong(JobEvent::id))
        .toList();
  }

  private long firstOfJob(long jobId) {
    return readings.ofJob(jobId, 0, 1).stream()
        .mapToLong(Reading::id)
        .findFirst()
        .orElse(Long.MAX_VALUE);
  }
}
