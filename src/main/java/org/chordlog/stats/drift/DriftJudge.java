package org.chordlog.stats.drift;

import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.statistics.distribution.TDistribution;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * What moves a machine's level now. The stretch since the last event speaks first; where it refuses
 * nothing, a creep found before goes on until the newest pieces show another slope; then the trend
 * pooled over the stretches before. A steady machine of independent pieces is said to be steady in
 * 99 % of verdicts at least.
 */
final class DriftJudge {
  /** Of the test of a new lot's level. */
  private static final double LOT_ERROR = 0.002;

  private static final int LOT_LEAST = 3;
  private static final int LOT_MOST = 50;

  /** A creep found before ends where the newest pieces leave its slope out at this level... */
  private static final double ENDED = 0.8;

  /** ...or where it would no longer be found at this one. */
  private static final double LOST = 0.05;

  private final Stretch present;
  private final List<Stretch> earlier;
  private final List<Stretch> agreeing;
  private final List<Stretch> pooled;
  private final List<Start> settings;
  private final @Nullable DriftFinding carried;

  /**
   * {@code settings}: the newest corrections and set-ups; {@code carried}: a creep found before the
   * present stretch.
   */
  DriftJudge(
      Stretch present,
      EarlierStretches earlier,
      List<Start> settings,
      @Nullable DriftFinding carried) {
    this.present = present;
    this.earlier = earlier.stretches();
    List<Stretch> alike = earlier.agreeing(present);
    this.agreeing = with(alike, present);
    this.pooled = with(alike, present.thinned());
    this.settings = settings;
    this.carried = carried;
  }

  private static List<Stretch> with(List<Stretch> earlier, Stretch last) {
    return Stream.concat(earlier.stream(), Stream.of(last))
        .filter(each -> each.size() > 0)
        .toList();
  }

  /** Creep, jump or either; null if none. */
  @Nullable DriftFinding move() {
    if (present.refused()) {
      return own(new MoveFit(agreeing, present));
    }
    if (carried != null && goesOn(carried)) {
      return creep(carried.since());
    }
    boolean several = pooled.size() > 1 && PooledTrend.possible(pooled);
    return several && PooledTrend.of(pooled).pValue() < PooledTrend.ERROR
        ? creep(place(new MoveFit(agreeing, agreeing.get(agreeing.size() - 1)).begin()))
        : null;
  }

  private DriftFinding own(MoveFit fit) {
    MachinePlace step = place(fit.step());
    return switch (fit.kind()) {
      case JUMP ->
          new DriftFinding(
              DriftFinding.Kind.JUMP, step, null, fit.stepHeight(), null, Corrections.NONE, "");
      case MOVE ->
          new DriftFinding(
              DriftFinding.Kind.MOVE, step, null, fit.stepHeight(), null, Corrections.NONE, "");
      default -> creep(since(fit));
    };
  }

  /** A creep that was known before began where it did. */
  private MachinePlace since(MoveFit fit) {
    MachinePlace found = place(fit.begin());
    return carried != null && goesOn(carried) ? carried.since() : found;
  }

  /** The creep from there on, through all that happened since. */
  private DriftFinding creep(MachinePlace since) {
    TheilSen line = line(since);
    double now = present.size() > 0 ? present.x()[present.size() - 1] : since.piece();
    return new DriftFinding(
        DriftFinding.Kind.CREEP,
        since,
        null,
        line.slope() * Math.max(0, now - since.piece()),
        line,
        Corrections.of(settingsSince(since)),
        "");
  }

  private List<Start> settingsSince(MachinePlace since) {
    return settings.stream().filter(each -> each.place().piece() > since.piece()).toList();
  }

  /** Through all since then, if they are enough for one. */
  private TheilSen line(MachinePlace since) {
    List<Stretch> from = from(since);
    long blocks = from.stream().mapToLong(Stretch::size).sum();
    if (blocks >= MachineVerdict.LEAST && PooledTrend.possible(from)) {
      return PooledTrend.of(from).line();
    }
    return present.enough() ? present.line() : PooledTrend.of(pooled).line();
  }

  /** All stretches, cut where it began. */
  private List<Stretch> from(MachinePlace since) {
    return Stream.concat(earlier.stream(), Stream.of(present))
        .map(each -> each.from((double) since.piece()))
        .filter(each -> each.size() > 0)
        .toList();
  }

  private boolean goesOn(DriftFinding creep) {
    List<Stretch> before =
        earlier.stream()
            .map(each -> each.from((double) creep.since().piece()))
            .filter(each -> each.size() > 0)
            .toList();
    return PooledTrend.possible(before)
        && !EarlierStretches.contradict(before, present, ENDED)
        && PooledTrend.of(with(earlier, present.thinned())).pValue() < LOST;
  }

  /** The step that a recorded lot made; null if none is seen. */
  @Nullable DriftFinding lot() {
    if (present.start().cause() != Start.Cause.LOT || earlier.isEmpty()) {
      return null;
    }
    Level after = Level.of(present.blocks().stream().limit(LOT_MOST).toList());
    Level before = Level.of(newestOf(earlier.get(earlier.size() - 1)));
    double step = after.mean - before.mean;
    return after.pieces >= LOT_LEAST && Level.chance(before, after) < LOT_ERROR
        ? new DriftFinding(
            DriftFinding.Kind.LOT,
            present.start().place(),
            null,
            step,
            null,
            Corrections.NONE,
            present.start().lot())
        : null;
  }

  private static List<Block> newestOf(Stretch stretch) {
    double last = stretch.x()[stretch.size() - 1];
    return stretch.from(last - LOT_MOST).blocks();
  }

  /** Mean of pieces, with the sum of squares of their block means about it. */
  private record Level(double mean, double squares, double pieces, int blocks) {
    static Level of(List<Block> blocks) {
      double pieces = blocks.stream().mapToLong(Block::count).sum();
      double mean = blocks.stream().mapToDouble(b -> b.count() * b.mean()).sum() / pieces;
      double squares =
          blocks.stream().mapToDouble(b -> b.count() * (b.mean() - mean) * (b.mean() - mean)).sum();
      return new Level(mean, squares, pieces, blocks.size());
    }

    /** Two-sided chance of their difference, by Student's t with the pooled variance. */
    static double chance(Level a, Level b) {
      double freedom = a.blocks + b.blocks - 2.0;
      double variance = (a.squares + b.squares) / freedom * (1 / a.pieces + 1 / b.pieces);
      if (freedom < LOT_LEAST || !(variance > 0)) {
        return 1;
      }
      double t = Math.abs(a.mean - b.mean) / Math.sqrt(variance);
      return 2 * TDistribution.of(freedom).survivalProbability(t);
    }
  }

  private static MachinePlace place(Block block) {
    return new MachinePlace(Math.round(block.at()), block.atMicros());
  }
}
