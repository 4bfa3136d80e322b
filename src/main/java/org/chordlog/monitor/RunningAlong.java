package org.chordlog.monitor;

import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.Uniformity;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;
import org.chordlog.store.Store;

/**
 * How even the pieces of one job are along their length, each evaluated once from its stored
 * profile.
 */
final class RunningAlong extends CatchUpOfJob<AlongStatistics> {
  RunningAlong(Store store, long jobId) {
    super(store, jobId);
  }

  @Override
  CheckpointLadder<AlongStatistics> ladder() {
    return new CheckpointLadder<>(
        store.checkpoints(), "along/" + jobId, AlongStatistics::new, AlongStatistics::restore);
  }

  /** Nothing that can be set changes these charts. */
  @Override
  boolean prepare() {
    return false;
  }

  /** A signal whose cause was found no longer makes the pieces uneven. */
  @Override
  void ready(AlongStatistics statistics) {
    for (AlongMeasure measure : AlongMeasure.values()) {
      statistics.answer(measure, AnsweredSignals.of(store.signalAnswers(), jobId, measure));
    }
  }

  @Override
  void note(AlongStatistics statistics, Exclusion each) {
    boolean unused = statistics.exclude(each.readingId(), each.excluded() ? each.reason() : "");
  }

  /** A reading of a bridge that was set down counts as processed and adds nothing. */
  @Override
  void take(AlongStatistics statistics, Reading reading) {
    if (reading.captured().mode() == CaptureMode.PASSING
        && RollerWatch.evaluated(store, reading).outcome() instanceof PieceOutcome.Measured piece) {
      Uniformity even = piece.result().uniformity();
      statistics.add(
          new AlongStatistics.Piece(
              reading.id(),
              reading.piece(),
              reading.wallMicros(),
              even.rangePercent(),
              even.trendPercent(),
              even.trendUncertaintyPercent()));
    }
  }
}
