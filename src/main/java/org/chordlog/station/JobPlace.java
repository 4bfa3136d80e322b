package org.chordlog.station;

import org.chordlog.measure.Job;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** Where the active job goes on; found again from its readings after a start or a change of job. */
final class JobPlace {
  private final Store store;
  private long jobId;
  private @Nullable Place place;

  JobPlace(Store store) {
    this.store = store;
  }

  Place of(Job job) {
    @Nullable Place known = place;
    if (known == null || jobId != job.id()) {
      known = resumed(job);
    }
    known = known.on(job.plan());
    set(job, known);
    return known;
  }

  void set(Job job, Place next) {
    jobId = job.id();
    place = next;
  }

  /** The next is found from the store again. */
  void forget() {
    place = null;
  }

  /** Where someone chose or went back to, else after the last reading, whether it counts or not. */
  private Place resumed(Job job) {
    return new KeptPlace(store, job.id()).find().orElseGet(() -> afterLast(job));
  }

  private Place afterLast(Job job) {
    return store
        .readings()
        .newestOfJob(job.id())
        .map(last -> Place.of(last).after(job.plan()))
        .orElseGet(() -> Place.first(job.plan()));
  }
}
