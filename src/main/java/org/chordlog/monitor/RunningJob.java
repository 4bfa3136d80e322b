package org.chordlog.monitor;

import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.Store;

/** The running statistics of one job; a change of its plan recomputes them. */
class RunningJob extends CatchUpOfJob<JobStatistics> {
  private final Observations observations;
  private StatisticsPlan plan;

  RunningJob(Store store, long jobId) {
    super(store, jobId);
    this.plan = plan();
    this.observations = new Observations(store.readings());
  }

  @Override
  CheckpointLadder<JobStatistics> ladder() {
    return new CheckpointLadder<>(
        store.checkpoints(),
        "job/" + jobId,
        () -> new JobStatistics(plan),
        state -> JobStatistics.restore(plan, state));
  }

  Standing standing() {
    return look(
        (running, behind) ->
            new Standing(
                running.count(),
                running.lastReadingId(),
                running.eventId(),
                running.exclusionId(),
                running.withdrawalId(),
                AnsweredSignals.newest(store.signalAnswers(), jobId),
                plan.text().hashCode(),
                behind));
  }

  @Override
  boolean prepare() {
    StatisticsPlan old = plan;
    plan = plan();
    return !plan.equals(old);
  }

  /** A signal whose cause was found no longer holds the verdict. */
  @Override
  void ready(JobStatistics statistics) {
    statistics.answer(AnsweredSignals.of(store.signalAnswers(), jobId));
  }

  private StatisticsPlan plan() {
    return Monitor.plan(store.jobs().find(jobId).orElseThrow());
  }

  @Override
  void note(JobStatistics statistics, Exclusion each) {
    boolean unused = statistics.exclude(each.readingId(), each.excluded() ? each.reason() : "");
  }

  /** Flats are counted as processed but add no observation. */
  @Override
  void take(JobStatistics statistics, Reading reading) {
    Observation seen = observations.of(reading);
    if (seen != null) {
      statistics.add(seen);
    }
  }
}
