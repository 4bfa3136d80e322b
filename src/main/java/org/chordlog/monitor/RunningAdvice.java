package org.chordlog.monitor;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.chordlog.correction.Aim;
import org.chordlog.correction.CorrectionSnapshot;
import org.chordlog.correction.GainPrior;
import org.chordlog.correction.MachineCorrector;
import org.chordlog.correction.MachineCorrector.Described;
import org.chordlog.correction.MachineScale;
import org.chordlog.correction.PieceReading;
import org.chordlog.correction.Told;
import org.chordlog.correction.Tuning;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.RollerScale;
import org.chordlog.measure.Specification;
import org.chordlog.store.Store;
import org.jspecify.annotations.Nullable;

/** The correction filter of one machine over its jobs; scales come into force in order of time. */
final class RunningAdvice extends OverMachine<MachineCorrector> {
  private static final Tuning TUNING = Tuning.usual();
  private final Map<Long, Optional<Job>> jobs = new HashMap<>();
  private final Observations observations;
  private volatile List<Described> scales = List.of();

  RunningAdvice(Store store, String machine) {
    super(store, machine);
    observations = new Observations(store.readings());
  }

  private static Described described(RollerScale known) {
    return new Described(scale(known), known.atMicros());
  }

  private static MachineScale scale(RollerScale known) {
    RollerScale.Motion motion = known.motion();
    RollerScale.@Nullable Gain gain = known.gain();
    return new MachineScale(
        known.name(),
        known.unit(),
        Objects.requireNonNullElse(motion.step(), 0.0),
        tighter(motion.tighter()),
        Objects.requireNonNullElse(motion.lostMotion(), 0.0),
        motion.moveUncertainty(),
        gain == null
            ? GainPrior.unknown()
            : new GainPrior(gain.perMmPerUnit(), gain.standardUncertainty()));
  }

  private static MachineScale.Tighter tighter(RollerScale.Tighter way) {
    return switch (way) {
      case HIGHER -> MachineScale.Tighter.HIGHER;
      case LOWER -> MachineScale.Tighter.LOWER;
      case UNKNOWN -> MachineScale.Tighter.UNKNOWN;
    };
  }

  @Override
  CheckpointLadder<MachineCorrector> ladder() {
    return new CheckpointLadder<>(
        store().checkpoints(),
        checkpointOwner(machine()),
        () -> new MachineCorrector(TUNING, () -> scales),
        state -> MachineCorrector.restore(state, TUNING, () -> scales));
  }

  /** Checkpoints outlive a release: another name means that all readings are read again. */
  static String checkpointOwner(String machine) {
    return "correction/" + machine;
  }

  @Override
  boolean prepare() {
    jobs.clear();
    scales = store().machines().scales(machine()).stream().map(RunningAdvice::described).toList();
    return super.prepare();
  }

  /** A job without limits says nothing about what a correction is worth. */
  @Override
  void counted(MachineCorrector corrector, Reading reading) {
    Specification asked = specification(reading);
    if (limited(asked)) {
      jobs.computeIfAbsent(reading.jobId(), store().jobs()::readable)
          .ifPresent(job -> measured(corrector, reading, job, asked));
    }
  }

  private void measured(MachineCorrector corrector, Reading reading, Job job, Specification asked) {
    corrector.at(reading.wallMicros());
    PieceReading piece =
        PieceReading.of(
            reading.radius(), job.measuredFace(), observations.repeatabilityPerMm(reading));
    corrector.reading(
        start(job, asked),
        reading.piece(),
        piece.at(reading.position(), reading.circumstances().pass()));
  }

  private static Told.JobStart start(Job job, Specification asked) {
    return new Told.JobStart(
        job.id(), Aim.of(asked), job.part(), job.section().toString(), job.materialLot(), null);
  }

  /** What there is to say while that job is on the machine. */
  static CorrectionSnapshot snapshot(MachineCorrector corrector, Job job, String gaugeDoubt) {
    Specification asked = job.specification();
    if (!limited(asked)) {
      return corrector.snapshot(
          gaugeDoubt.isEmpty()
              ? "this job has no limits to weigh a correction against."
              : gaugeDoubt);
    }
    return corrector.snapshot(gaugeDoubt, start(job, asked));
  }

  private static boolean limited(Specification asked) {
    return asked.lowerLimitMm() != null || asked.upperLimitMm() != null;
  }
}
