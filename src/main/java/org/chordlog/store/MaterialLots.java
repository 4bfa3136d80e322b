package org.chordlog.store;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;

/**
 * Of which material lot each reading of a job is: as it was recorded with it, unless the lot was
 * put right since, by an event told later for a time before the reading, or by one taken back.
 */
public final class MaterialLots {
  private static final Comparator<JobEvent> NEWEST_FIRST =
      Comparator.comparingLong(JobEvent::afterReadingId).thenComparingLong(JobEvent::id).reversed();

  private final String first;
  private final List<JobEvent> events;
  private final Set<Long> takenBack;

  private MaterialLots(String first, List<JobEvent> events, Set<Long> takenBack) {
    this.first = first;
    this.events = events;
    this.takenBack = takenBack;
  }

  /** As it stands now. */
  public static MaterialLots of(Jobs jobs, Job job) {
    List<JobEvent> lots =
        jobs.eventsOfJob(job.id()).stream()
            .filter(each -> each.kind() == JobEvent.Kind.MATERIAL_LOT)
            .filter(each -> !each.materialLot().isBlank())
            .sorted(NEWEST_FIRST)
            .toList();
    Set<Long> takenBack = lots.isEmpty() ? Set.of() : jobs.takenBack(job.id());
    return new MaterialLots(job.materialLot(), lots, takenBack);
  }

  /** Empty where none is named. */
  public String of(Reading reading) {
    String recorded = Objects.requireNonNullElse(reading.circumstances().materialLot(), first);
    return before(reading).stream().anyMatch(each -> putsRight(each, reading))
        ? inForce(reading)
        : recorded;
  }

  private List<JobEvent> before(Reading reading) {
    return events.stream().filter(each -> each.afterReadingId() < reading.id()).toList();
  }

  private boolean putsRight(JobEvent event, Reading reading) {
    return takenBack.contains(event.id()) || event.atMicros() > reading.wallMicros();
  }

  private String inForce(Reading reading) {
    return before(reading).stream()
        .filter(each -> !takenBack.contains(each.id()))
        .map(JobEvent::materialLot)
        .findFirst()
        .orElse(first);
  }
}
