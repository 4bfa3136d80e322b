package org.chordlog.monitor;

import org.chordlog.measure.Reading;
import org.chordlog.stats.drift.MachineStatistics;
import org.chordlog.store.Store;

/**
 * One machine over its jobs: curvature on the specified face against the target in force when a
 * reading was taken, without flats and excluded readings.
 */
final class RunningMachine extends OverMachine<MachineStatistics> {
  private final CheckpointLadder<MachineStatistics> ladder;

  RunningMachine(Store store, String machine) {
    super(store, machine);
    this.ladder =
        new CheckpointLadder<>(
            store.checkpoints(),
            "machine/" + machine,
            MachineStatistics::new,
            MachineStatistics::restore);
  }

  @Override
  CheckpointLadder<MachineStatistics> ladder() {
    return ladder;
  }

  @Override
  void counted(MachineStatistics statistics, Reading reading) {
    Double radius = reading.radius().radiusMm();
    if (radius != null) {
      statistics.add(
          reading.jobId(),
          reading.piece(),
          reading.wallMicros(),
          1 / radius,
          1 / specification(reading).targetMm());
    }
  }
}
