package org.chordlog.store;

import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;

/** Where events stand on a machine, over all its jobs: told late, they stand where they were. */
public final class EventPlaces {
  private static final Comparator<JobEvent> ORDER =
      Comparator.comparingLong(JobEvent::afterReadingId).thenComparingLong(JobEvent::id);

  private final Readings readings;
  private final String machine;

  /** An event with its place. */
  private record Placed(JobEvent event, JobEvent there) {}

  public EventPlaces(Readings readings, String machine) {
    this.readings = readings;
    this.machine = machine;
  }

  /** One before the first reading of its job comes after what other jobs had measured by then. */
  public JobEvent placed(JobEvent event) {
    if (event.afterReadingId() > 0) {
      return event;
    }
    long ofJob =
        readings.ofJob(event.jobId(), 0, 1).stream()
            .mapToLong(Reading::id)
            .findFirst()
            .orElse(Long.MAX_VALUE);
    long since = readings.firstOfMachine(machine, event.atMicros()).orElse(Long.MAX_VALUE);
    return event.after(Math.min(ofJob, since) - 1);
  }

  /** The events as they are, in the order in which they happened. */
  public List<JobEvent> inOrder(List<JobEvent> events) {
    return events.stream()
        .map(each -> new Placed(each, placed(each)))
        .sorted(Comparator.comparing(Placed::there, ORDER))
        .map(Placed::event)
        .toList();
  }
}
