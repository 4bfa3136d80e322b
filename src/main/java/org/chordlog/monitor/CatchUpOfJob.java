package org.chordlog.monitor;

import java.util.List;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.store.Store;

/** Statistics of one job: fed with its readings, events, exclusions and withdrawals. */
abstract class CatchUpOfJob<S extends Checkpointed> extends CatchUp<S> {
  final Store store;
  final long jobId;

  CatchUpOfJob(Store store, long jobId) {
    this.store = store;
    this.jobId = jobId;
  }

  @Override
  List<JobEvent> events(long afterId) {
    return store.jobs().eventsOfJob(jobId, afterId);
  }

  @Override
  List<Exclusion> exclusions(long afterId) {
    return store.readings().exclusionsOfJob(jobId, afterId);
  }

  @Override
  List<EventWithdrawal> withdrawals() {
    return store.jobs().withdrawalsOfJob(jobId, 0);
  }

  @Override
  List<Reading> readings(long afterId, int limit) {
    return store.readings().ofJob(jobId, afterId, limit);
  }

  @Override
  long kept() {
    return store.readings().countOfJob(jobId);
  }
}
