package org.chordlog.station;

import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.Readings;
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

  /** Where someone chose, else after the last reading, at its place again when it was undone. */
  private Place resumed(Job job) {
    return new KeptPlace(store, job.id()).find().orElseGet(() -> afterLast(job));
  }

  private Place afterLast(Job job) {
    Readings readings = store.readings();
    List<Reading> last = readings.latestOfJob(job.id(), Long.MAX_VALUE, 1);
    if (last.isEmpty()) {
      return Place.first(job.plan());
    }
    Place at = Place.of(last.get(0));
    boolean undone = ExcludedIds.of(readings.exclusionsOfJob(job.id())).contains(last.get(0).id());
    return undone ? at : at.after(job.plan());
  }
}
