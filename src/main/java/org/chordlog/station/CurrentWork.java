package org.chordlog.station;

import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a station works on, held ready; goes on with what it knew while the store can't be read.
 * Written by the station's thread alone.
 */
final class CurrentWork {
  private static final Logger LOG = LoggerFactory.getLogger(CurrentWork.class);
  private static final long FRESH_NANOS = 2_000_000_000L;
  private static final Place NOWHERE = new Place(0, "");

  private final WorkReader reader;
  private final JobPlace jobPlace;
  private volatile WorkSnapshot work = WorkSnapshot.NONE;
  private volatile Place place = NOWHERE;
  private long readNanos;
  private boolean failed;

  CurrentWork(StationSettings settings, Store store) {
    reader = new WorkReader(settings.name(), settings.indicator(), store);
    jobPlace = new JobPlace(store);
  }

  WorkSnapshot work() {
    return work;
  }

  /** Piece 0 while there is no job. */
  Place place() {
    return place;
  }

  void refreshIfOld(long nanos) {
    if (nanos - readNanos > FRESH_NANOS) {
      refresh(nanos);
    }
  }

  void refresh(long nanos) {
    readNanos = nanos;
    try {
      WorkSnapshot fresh = reader.read(work);
      @Nullable Job job = fresh.job();
      place = job == null ? NOWHERE : jobPlace.of(job);
      work = fresh;
      failed = false;
    } catch (RuntimeException e) {
      if (!failed) {
        LOG.warn("The store can't be read; going on with what is known: {}", e.getMessage());
      }
      failed = true;
    }
  }

  /** Forgets where it was to go on. */
  void placeAsStored(long nanos) {
    jobPlace.forget();
    refresh(nanos);
  }

  void goTo(Place next) {
    @Nullable Job job = work.job();
    if (job != null) {
      jobPlace.set(job, next);
      place = next;
    }
  }

  /** After a reading there, the next place of the plan. */
  void advance(Reading taken) {
    @Nullable Job job = work.job();
    if (job != null) {
      goTo(Place.of(taken).after(job.plan()));
    }
  }
}
