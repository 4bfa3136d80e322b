package org.chordlog.station;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.store.Jobs;

/** The material lot that is in the machine: the newest one recorded that was not taken back. */
public final class CurrentLot {
  private CurrentLot() {}

  /** Empty where none was named. */
  public static String of(Jobs jobs, Job job) {
    List<String> lots = all(jobs, job);
    return lots.isEmpty() ? "" : lots.get(lots.size() - 1);
  }

  /** All lots of a job in the order in which they came. */
  public static List<String> all(Jobs jobs, Job job) {
    Set<Long> takenBack = new HashSet<>();
    jobs.withdrawalsOfJob(job.id(), 0).stream()
        .map(EventWithdrawal::eventId)
        .forEach(takenBack::add);
    List<String> lots = new java.util.ArrayList<>();
    if (!job.materialLot().isBlank()) {
      lots.add(job.materialLot());
    }
    jobs.eventsOfJob(job.id()).stream()
        .filter(each -> each.kind() == JobEvent.Kind.MATERIAL_LOT && !takenBack.contains(each.id()))
        .map(JobEvent::materialLot)
        .forEach(lots::add);
    return lots;
  }
}
