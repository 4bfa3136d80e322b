package org.chordlog.monitor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.store.Jobs.Specified;
import org.chordlog.store.Store;

/**
 * One machine over its jobs: curvature on the specified face against the target in force when a
 * reading was taken, without flats and excluded readings.
 */
final class RunningMachine extends CatchUp<MachineStatistics> {
  private final Store store;
  private final String machine;
  private final CheckpointLadder<MachineStatistics> ladder;
  private final Map<Long, Boolean> excluded = new HashMap<>();
  private final Map<Long, List<Specified>> specified = new HashMap<>();

  RunningMachine(Store store, String machine) {
    this.store = store;
    this.machine = machine;
    this.ladder =
        new CheckpointLadder<>(
            store.checkpoints(),
            "machine/" + machine,
            MachineStatistics::new,
            MachineStatistics::restore);
    exclusions(0).forEach(each -> excluded.put(each.readingId(), each.excluded()));
  }

  @Override
  CheckpointLadder<MachineStatistics> ladder() {
    return ladder;
  }

  /** Specifications may have changed since the last read. */
  @Override
  boolean prepare() {
    specified.clear();
    return false;
  }

  @Override
  List<JobEvent> events(long afterId) {
    return store.jobs().eventsOfMachine(machine, afterId);
  }

  @Override
  List<Exclusion> exclusions(long afterId) {
    return store.readings().exclusionsOfMachine(machine, afterId);
  }

  @Override
  List<Reading> readings(long afterId, int limit) {
    return store.readings().ofMachine(machine, afterId, limit);
  }

  @Override
  long kept() {
    return store.readings().countOfMachine(machine);
  }

  @Override
  void note(MachineStatistics statistics, Exclusion each) {
    excluded.put(each.readingId(), each.excluded());
  }

  @Override
  void take(MachineStatistics statistics, Reading reading) {
    Double radius = reading.radius().radiusMm();
    if (radius != null && !excluded.getOrDefault(reading.id(), false)) {
      statistics.add(
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
}
