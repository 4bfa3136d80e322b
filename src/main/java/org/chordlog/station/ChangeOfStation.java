package org.chordlog.station;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** Whether a station may get other settings while it works as it does now. */
record ChangeOfStation(Store store, StationStatus now) {
  /** An open job belongs to the machine that it is bent on. */
  void check(StationSettings settings) {
    @Nullable Long jobId = now.jobId();
    if (jobId == null || settings.machine().equals(now.machine())) {
      return;
    }
    Job job = store.jobs().find(jobId).orElseThrow();
    if (job.state() == Job.State.OPEN) {
      throw new BadInput(
          "machine",
          settings.machine(),
          "is not the machine of the open job " + job.name(),
          now.machine() + "; or close that job first");
    }
  }
}
