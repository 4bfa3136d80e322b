package org.chordlog.station;

import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.Stale;
import org.chordlog.store.Store;

/** The job that a station's readings go to, as the store has it now. Any thread may call. */
record ActiveJob(Store store, String station) {
  Optional<Job> find() {
    return store.jobs().activeOn(station);
  }

  /** {@link BadInput} where none is selected, {@link Stale} where it is closed. */
  Job open() {
    return open(
        find().orElseThrow(() -> new BadInput("job", "none", "is selected", "select a job first")));
  }

  static Job open(Job job) {
    if (job.state() == Job.State.CLOSED) {
      throw new Stale("Job " + job.id() + " is closed; reopen it first.");
    }
    return job;
  }

  /** {@link Stale} where that job is closed. */
  void refuseIfClosed(long jobId) {
    store.jobs().find(jobId).ifPresent(ActiveJob::open);
  }

  Job select(long jobId) {
    Job job =
        store
            .jobs()
            .find(jobId)
            .orElseThrow(() -> new BadInput("jobId", jobId, "is not known", "an id from the list"));
    if (!job.station().equals(station)) {
      throw new BadInput("jobId", jobId, "is a job of " + job.station(), "a job of " + station);
    }
    store.jobs().activate(station, open(job).id());
    return job;
  }
}
