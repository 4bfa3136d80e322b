package org.chordlog.correction;

import java.util.Objects;
import org.chordlog.correction.Advice.Since;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The whole state of a machine's filter, and what follows from it; {@link MachineEvents} changes
 * it.
 */
final class MachineState {
  final Tuning tuning;
  final MachineMemory memory = new MachineMemory();
  final Positions positions = new Positions();
  final RollerMoves moves = new RollerMoves();
  final Following following = new Following();
  final Trail trail = new Trail();
  MachineScale scale;
  @Nullable JobState job;
  @Nullable LevelFilter filter;

  /** What nothing was measured after. */
  Since since = Since.SET_UP;

  /** The level is known although nothing was measured since: a known lot. */
  boolean foreseen;

  boolean flat;

  /** Variance of the newest piece's reading, permil squared. */
  double readingVariance;

  MachineState(MachineScale scale, Tuning tuning) {
    this.scale = scale;
    this.tuning = tuning;
  }

  Tuning tuning() {
    return tuning;
  }

  MachineScale scale() {
    return scale;
  }

  Since since() {
    return since;
  }

  double readingVariance() {
    return readingVariance;
  }

  @Nullable JobState job() {
    return job;
  }

  JobState present() {
    return Objects.requireNonNull(job);
  }

  /** Not null once there is a job. */
  LevelFilter filter() {
    return Objects.requireNonNull(filter);
  }

  Belief belief() {
    return filter().belief();
  }

  MoveError moveError() {
    return new MoveError(scale, present().aim().halfTolerance());
  }

  Reach reach() {
    return Reach.of(scale, moves.tried());
  }

  /** Level aimed at, permil: not 0 where positions differ so much that their middle counts. */
  double aimedAt() {
    Positions.Apart apart = positions.apart(present().aim().halfTolerance());
    return apart == null ? 0 : apart.aim();
  }

  /** Variance of the pieces themselves about their level, permil squared. */
  double pieceVariance() {
    double newest = filter().newest().variance();
    double all = Double.isNaN(newest) ? filter().scatterVariance() : newest;
    return Math.max(0, all - readingVariance);
  }

  Adviser adviser() {
    int toCome = present().toCome(tuning.stakes().pieces());
    double pieces = pieceVariance();
    return new Adviser(
        new Adviser.Situation(
            new Adviser.Goal(present().aim(), aimedAt(), toCome),
            scale,
            moves.setting(),
            reach(),
            belief(),
            new Adviser.Variances(pieces, pieces + readingVariance)),
        tuning.stakes());
  }

  /** Whether the newest reading is no surprise. */
  boolean usual() {
    NewestReading newest = filter().newest();
    return newest.steady() + newest.silent() >= tuning.stakes().leastSteady();
  }

  /** Advice never comes from a gap: something is known of the level since the last event. */
  boolean mayAdvise() {
    return foreseen || (since == Since.PIECE && usual() && !flat);
  }

  void write(Packer to) {
    scale.write(to);
    to.put(job != null);
    if (job != null) {
      job.write(to);
      filter().write(to);
    }
    memory.write(to);
    positions.write(to);
    moves.write(to);
    following.write(to);
    trail.write(to);
    to.put(since.name()).put(foreseen).put(flat).put(readingVariance);
  }

  static MachineState read(Unpacker from, Tuning tuning) {
    MachineState state = new MachineState(MachineScale.read(from), tuning);
    if (from.aBoolean()) {
      state.job = JobState.read(from);
      state.filter = LevelFilter.read(from, tuning);
    }
    state.memory.read(from);
    state.positions.read(from);
    state.moves.read(from);
    state.following.read(from);
    state.trail.read(from);
    state.since = Since.valueOf(from.text());
    state.foreseen = from.aBoolean();
    state.flat = from.aBoolean();
    state.readingVariance = from.aDouble();
    return state;
  }
}
