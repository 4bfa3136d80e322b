package org.chordlog.monitor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.correction.Aim;
import org.chordlog.correction.GainPrior;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Specification;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** The correction filter of one machine over its jobs; another scale has it learn anew. */
final class RunningAdvice extends OverMachine<MachineAdvice> {
  private final Map<Long, Optional<Job>> jobs = new HashMap<>();
  private final Observations observations;
  private MachineScale scale;

  RunningAdvice(Store store, String machine) {
    super(store, machine);
    observations = new Observations(store.readings());
    scale = scale();
  }

  private MachineScale scale() {
    List<org.chordlog.measure.MachineScale> known = store().machines().scales(machine());
    return known.isEmpty() ? MachineScale.unknown() : scale(known.get(known.size() - 1));
  }

  private static MachineScale scale(org.chordlog.measure.MachineScale known) {
    Double lost = known.lostMotion();
    return new MachineScale(
        known.name(),
        known.unit(),
        known.step(),
        tighter(known.tighter()),
        lost == null ? 0 : lost,
        null,
        GainPrior.unknown());
  }

  private static MachineScale.Tighter tighter(org.chordlog.measure.MachineScale.Tighter way) {
    return switch (way) {
      case UPWARDS -> MachineScale.Tighter.HIGHER;
      case DOWNWARDS -> MachineScale.Tighter.LOWER;
      case UNKNOWN -> MachineScale.Tighter.UNKNOWN;
    };
  }

  @Override
  CheckpointLadder<MachineAdvice> ladder() {
    return new CheckpointLadder<>(
        store().checkpoints(),
        "correction/" + machine(),
        () -> new MachineAdvice(scale),
        state -> MachineAdvice.restore(scale, state));
  }

  @Override
  boolean prepare() {
    jobs.clear();
    MachineScale old = scale;
    scale = scale();
    return super.prepare() || !scale.equals(old);
  }

  @Override
  void counted(MachineAdvice advice, Reading reading) {
    advice.add(seen(reading));
  }

  private MachineAdvice.@Nullable Seen seen(Reading reading) {
    Specification asked = specification(reading);
    Optional<Job> job = jobs.computeIfAbsent(reading.jobId(), store().jobs()::find);
    boolean limited = asked.lowerLimitMm() != null || asked.upperLimitMm() != null;
    return job.isEmpty() || !limited ? null : seen(reading, job.get(), asked);
  }

  private MachineAdvice.Seen seen(Reading reading, Job job, Specification asked) {
    PieceReading piece =
        PieceReading.of(
            reading.radius(), job.measuredFace(), observations.repeatabilityPerMm(reading));
    return new MachineAdvice.Seen(
        new Told.JobStart(
            job.id(), Aim.of(asked), job.part(), job.section().toString(), job.materialLot(), null),
        reading.piece(),
        piece.at(reading.position(), reading.circumstances().pass()));
  }
}
