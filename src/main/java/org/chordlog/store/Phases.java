package org.chordlog.store;

import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;

/**
 * In which phase of its job each reading is, as the statistics of the job count them: 1 until the
 * first event that begins one, and one more with each that was not taken back.
 */
public final class Phases {
  /** The last reading before each phase but the first, ascending. */
  private final long[] endedAt;

  private Phases(long[] endedAt) {
    this.endedAt = endedAt;
  }

  /** As it stands now. */
  public static Phases of(Jobs jobs, Job job) {
    return new Phases(
        jobs.countingOfJob(job.id()).stream()
            .filter(JobEvent::startsPhase)
            .mapToLong(JobEvent::afterReadingId)
            .sorted()
            .toArray());
  }

  /** Counted from 1; an event without a reading after it makes a number that no reading has. */
  public int of(Reading reading) {
    int ended = 0;
    int open = endedAt.length;
    while (ended < open) {
      int middle = (ended + open) >>> 1;
      if (endedAt[middle] < reading.id()) {
        ended = middle + 1;
      } else {
        open = middle;
      }
    }
    return ended + 1;
  }
}
