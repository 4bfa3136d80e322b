package org.chordlog.correction;

import java.util.OptionalInt;
import org.chordlog.correction.Advice.Since;
import org.chordlog.correction.CorrectionSnapshot.Kept;
import org.chordlog.correction.CorrectionSnapshot.Learned;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Sentence;
import org.chordlog.stats.math.Packer;
import org.jspecify.annotations.Nullable;

/**
 * Says for one machine by how much to correct, or to leave the rollers alone. It is told pieces and
 * events in their order; each costs a number of steps that does not grow, and the same events give
 * the same state, bit for bit. Not safe for use by several threads.
 */
public final class Corrector {
  private static final int VERSION = 7;
  private final MachineState state;

  public Corrector(MachineScale scale, Tuning tuning) {
    this(new MachineState(scale, tuning));
  }

  private Corrector(MachineState state) {
    this.state = state;
  }

  /**
   * Takes in what happened next. {@link BadInput} for what is out of order (a lot or a piece before
   * any job, a lot that is in the machine already, a piece number that does not rise); the state is
   * then as before.
   */
  public void tell(Told told) {
    told.tell(new MachineEvents(state));
  }

  /** The job that was told last, −1 before the first. */
  public long job() {
    JobState job = state.job();
    return job == null ? -1 : job.job().job();
  }

  /** What to do now. */
  public Advice advice() {
    JobState job = state.job();
    if (job == null) {
      return new Advice.None(Sentence.plain("no job on this machine yet."));
    }
    LevelEstimate level =
        LevelEstimate.of(
            job.aim(), state.filter().belief().level(), state.filter().belief().levelUncertainty());
    if (state.mayAdvise()) {
      return state.adviser().advise();
    }
    if (state.since() != Since.PIECE) {
      return new Advice.TooEarly(state.filter().fresh() ? null : level, 1, state.since());
    }
    return state.usual() ? flat(level) : new Advice.MeasureAgain(level);
  }

  private static Advice flat(LevelEstimate level) {
    return new Advice.AmountUnknown(
        level, Advice.Direction.TIGHTER, Double.POSITIVE_INFINITY, level.standardUncertaintyMm());
  }

  /** Advice and everything learned, while nothing is wrong with the gauge. */
  public CorrectionSnapshot snapshot() {
    return snapshot("");
  }

  /**
   * Advice and everything learned. {@code gaugeDoubt}: why the gauge can't be relied on now, empty
   * if it can; then no advice is given.
   */
  public CorrectionSnapshot snapshot(String gaugeDoubt) {
    Advice advice = gaugeDoubt.isBlank() ? advice() : new Advice.None(Sentence.plain(gaugeDoubt));
    return new CorrectionSnapshot(
        advice, Notices.of(state), learned(), setting(), start(), null, state.trail.points());
  }

  private @Nullable StartSetting start() {
    JobState job = state.job();
    return job == null || job.sinceSetUp() > 0
        ? null
        : state.memory.start(job.place(state.filter().belief()));
  }

  private @Nullable Double setting() {
    RollerSetting setting = state.moves.setting();
    return setting.known() ? (Double) setting.number() : null;
  }

  private Learned learned() {
    JobState job = state.job();
    Promises promises = state.following.promises();
    double stated = promises.given() == 0 ? 0 : promises.said() / promises.given();
    return new Learned(
        state.scale(),
        job == null ? null : GainEstimate.of(job.aim(), state.filter().belief()),
        job == null ? 0 : job.aim().mm(Math.sqrt(state.pieceVariance())),
        job == null ? null : readiness(job),
        new Kept(promises.given(), promises.kept(), stated));
  }

  private Readiness readiness(JobState job) {
    double pieces = Math.max(1e-12, state.pieceVariance());
    Belief belief = state.filter().belief();
    double capability = job.aim().halfTolerance() / (3 * Math.sqrt(pieces));
    OptionalInt needed = TrialPieces.needed(capability);
    double known = (pieces + state.readingVariance()) / belief.levelVariance();
    int toCome = (int) Math.max(0, Math.ceil(needed.orElse(0) - known));
    double out =
        Outside.share(job.aim(), belief.level(), Math.sqrt(pieces + belief.levelVariance()));
    return new Readiness(
        job.sinceSetUp(),
        capability,
        needed.isPresent() ? (Integer) needed.getAsInt() : null,
        needed.isPresent() ? (Integer) toCome : null,
        out);
  }

  /**
   * The number on the scale to begin a job at, from earlier jobs of the machine; null where nothing
   * is known of the part or its section, or the gain is not known.
   */
  public @Nullable StartSetting startSetting(Told.JobStart planned) {
    JobState job = state.job();
    if (job == null) {
      return null;
    }
    Belief belief = state.filter().belief();
    double ratio = planned.aim().targetMm() / job.aim().targetMm();
    return state.memory.start(
        JobState.of(planned)
            .place(belief.withGain(belief.gain() * ratio, belief.gainVariance() * ratio * ratio)));
  }

  /**
   * What a reading near the start of the next piece says of its rest; null before five pieces were
   * measured at two positions or more, that one among them, or while the gain is not known.
   */
  public @Nullable RestOfPiece restOfPiece(PieceReading start) {
    JobState job = state.job();
    return job == null ? null : new StartAdvice(state, job).of(start);
  }

  /** The whole state with its version; its size does not grow with the pieces. */
  public byte[] checkpoint() {
    Packer to = new Packer().put(VERSION);
    state.write(to);
    return to.bytes();
  }

  /** {@link BadInput} for what is not a checkpoint of this version. */
  public static Corrector restore(byte[] checkpoint, Tuning tuning) {
    return Packing.restore(
        checkpoint, VERSION, from -> new Corrector(MachineState.read(from, tuning)));
  }

  static Corrector of(MachineState state) {
    return new Corrector(state);
  }

  MachineState state() {
    return state;
  }
}
