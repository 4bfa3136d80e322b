package org.chordlog.stats.drift;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.descriptive.rank.Median;
import org.chordlog.stats.drift.MachineVerdict.State;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/** Findings, level, forecast and pace as a verdict. */
final class VerdictMaker {
  private static final int NEWEST = 20;
  private final List<Stretch> all;
  private final Stretch present;
  private final @Nullable DriftFinding move;
  private final @Nullable DriftFinding lot;
  private final double ewma;

  /** {@code all}: the stretches before, and the present one. */
  VerdictMaker(
      List<Stretch> all,
      Stretch present,
      @Nullable DriftFinding move,
      @Nullable DriftFinding lot,
      double ewma) {
    this.all = all;
    this.present = present;
    this.move = move;
    this.lot = lot;
    this.ewma = ewma;
  }

  MachineVerdict verdict(long pieces, List<DriftFinding> history, @Nullable Double tolerance) {
    List<DriftFinding> findings = Stream.of(move, lot).flatMap(Stream::ofNullable).toList();
    Double level = level();
    Double reach = reach(level, tolerance);
    DriftFinding gravest = findings.isEmpty() ? null : findings.get(0);
    return new MachineVerdict(
        state(gravest),
        VerdictText.of(gravest, present.enough(), reach),
        pieces,
        findings,
        history,
        level,
        known(ewma),
        present.enough() ? present.line() : null,
        present.enough() ? (Double) present.trend().pValue() : null,
        present.enough() ? (Double) present.change().pValue() : null,
        reach,
        pace(),
        scatter());
  }

  /**
   * By the mean square of successive differences (von Neumann et al. 1941, Annals of Mathematical
   * Statistics 12, 153-162), of means of several pieces too; null of too few.
   */
  private @Nullable Double scatter() {
    double sum = 0;
    int count = 0;
    for (Stretch each : all) {
      List<Block> blocks = each.blocks();
      for (int i = 1; i < blocks.size(); i++) {
        Block before = blocks.get(i - 1);
        Block after = blocks.get(i);
        double difference = after.mean() - before.mean();
        sum += difference * difference / (1.0 / before.count() + 1.0 / after.count());
        count++;
      }
    }
    return count < MachineVerdict.LEAST - 1 ? null : (Double) Math.sqrt(sum / count);
  }

  private State state(@Nullable DriftFinding gravest) {
    if (gravest == null) {
      return present.enough() ? State.STEADY : State.TOO_FEW;
    }
    return switch (gravest.kind()) {
      case CREEP -> State.CREEPING;
      case JUMP -> State.JUMPED;
      case MOVE -> State.MOVED;
      case LOT -> State.NEW_LOT;
    };
  }

  private @Nullable Double level() {
    if (present.size() < 2) {
      return known(ewma);
    }
    double last = present.x()[present.size() - 1];
    if (move != null && move.slope() != null) {
      return move.slope().at(last);
    }
    Stretch since = move == null ? present : present.from((double) move.since().piece());
    return Arrays.stream(since.y()).average().orElse(ewma);
  }

  /** Pieces until the line of a creep gets to the tolerance; null without one. */
  private @Nullable Double reach(@Nullable Double level, @Nullable Double tolerance) {
    TheilSen line = move == null ? null : move.slope();
    if (line == null || level == null || tolerance == null || line.slope() == 0) {
      return null;
    }
    return Math.max(0, (Math.signum(line.slope()) * tolerance - level) / line.slope());
  }

  /** Median of the times between the newest pieces, so that a night between them is no matter. */
  private @Nullable Double pace() {
    List<Block> newest =
        present.blocks().subList(Math.max(0, present.size() - NEWEST), present.size());
    double[] paces = new double[Math.max(0, newest.size() - 1)];
    for (int i = 0; i < paces.length; i++) {
      Block next = Objects.requireNonNull(newest.get(i + 1));
      double time = next.atMicros() - newest.get(i).atMicros();
      paces[i] = time / newest.get(i).count();
    }
    return paces.length < 4 ? null : (Double) new Median().evaluate(paces);
  }

  private static @Nullable Double known(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
