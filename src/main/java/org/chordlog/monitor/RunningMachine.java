package org.chordlog.monitor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.MachineStatistics;
import org.chordlog.store.Jobs.Specified;
import org.chordlog.store.Store;

/**
 * One machine over its jobs, brought up to what the store holds before each look: curvature on the
 * specified face against the target in force when a reading was taken, without flats and excluded
 * readings.
 */
final class RunningMachine {
  private static final int PAGE = 1_000;

  private final Store store;
  private final String machine;
  private final Ladder<MachineRun> ladder;
  private final Map<Long, Boolean> excluded = new HashMap<>();
  private final Map<Long, List<Specified>> specified = new HashMap<>();
  private MachineRun run;

  RunningMachine(Store store, String machine) {
    this.store = store;
    this.machine = machine;
    this.ladder =
        new Ladder<>(
            store.checkpoints(),
            "machine/" + machine,
            () -> new MachineRun(new MachineStatistics()),
            MachineRun::unpack);
    this.run = ladder.newest();
    store
        .readings()
        .exclusionsOfMachine(machine, 0)
        .forEach(each -> excluded.put(each.readingId(), each.excluded()));
  }

  synchronized <T> T read(Function<MachineStatistics, T> view) {
    catchUp();
    return view.apply(run.statistics());
  }

  private void catchUp() {
    takeChanges();
    specified.clear();
    List<Reading> page;
    do {
      page = store.readings().ofMachine(machine, run.lastReadingId(), PAGE);
      boolean more = page.size() == PAGE;
      for (Reading reading : page) {
        run.happenedUpTo(reading.id() - 1);
        take(reading);
        run.wentOver(reading.id());
        ladder.keepIfDue(run, more);
      }
    } while (page.size() == PAGE);
    run.happenedUpTo(Long.MAX_VALUE);
  }

  private void takeChanges() {
    List<Exclusion> exclusions = store.readings().exclusionsOfMachine(machine, run.exclusionId());
    List<JobEvent> events = store.jobs().eventsOfMachine(machine, run.eventId());
    exclusions.forEach(each -> excluded.put(each.readingId(), each.excluded()));
    long newest =
        exclusions.isEmpty() ? run.exclusionId() : exclusions.get(exclusions.size() - 1).id();
    long before =
        exclusions.stream().mapToLong(each -> each.readingId() - 1).min().orElse(Long.MAX_VALUE);
    before = Math.min(before, PendingEvents.earliest(events));
    if (before < run.lastReadingId()) {
      run = ladder.back(before);
      events = store.jobs().eventsOfMachine(machine, run.eventId());
    }
    run.note(events, newest);
  }

  private void take(Reading reading) {
    Double radius = reading.radius().radiusMm();
    if (radius != null && !excluded.getOrDefault(reading.id(), false)) {
      run.statistics()
          .add(
              reading.jobId(),
              reading.piece(),
              reading.wallMicros(),
              1 / radius,
              1 / targetMm(reading));
    }
  }

  private double targetMm(Reading reading) {
    List<Specified> all = specified.computeIfAbsent(reading.jobId(), store.jobs()::specifications);
    Specified inForce = all.get(0);
    for (Specified each : all) {
      inForce = each.sinceMicros() <= reading.wallMicros() ? each : inForce;
    }
    return inForce.specification().targetMm();
  }

  synchronized void keep() {
    ladder.keepNow(run);
  }
}
