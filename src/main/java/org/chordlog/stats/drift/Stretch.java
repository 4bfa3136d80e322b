package org.chordlog.stats.drift;

import java.util.List;
import org.chordlog.stats.drift.MachineVerdict.State;
import org.chordlog.stats.math.Blocks;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.ChangePoint;
import org.chordlog.stats.math.Hinge;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.MannKendall;
import org.chordlog.stats.math.TheilSen;

/**
 * The pieces of a machine between two settings of its rollers. It is steady unless Mann-Kendall or
 * Pettitt refuses that at {@value #ERROR}; then jumped or creeping, whichever of a step and a bent
 * line, both with three parameters, leaves the smaller sum of squares; a doubtful step with sloping
 * sides is creep.
 */
final class Stretch {
  /** For each of two tests; with that of {@link PooledTrend} 1 % in all (Bonferroni). */
  static final double ERROR = 0.0045;

  /** Residual variances that a step must be better by: a likelihood 50 times as large. */
  private static final double CLEARLY = 8;

  /** One-sided. */
  private static final double LEVEL_SIDES = 0.1;

  /** Means that an earlier stretch is kept as. */
  private static final int MEANS = 20;

  private final List<Block> blocks;
  private final double[] x;
  private final double[] y;
  private final MannKendall trend;

  Stretch(List<Block> blocks) {
    this.blocks = List.copyOf(blocks);
    x = blocks.stream().mapToDouble(Block::at).toArray();
    y = blocks.stream().mapToDouble(Block::mean).toArray();
    trend = MannKendall.of(y);
  }

  List<Block> blocks() {
    return blocks;
  }

  int size() {
    return x.length;
  }

  double[] x() {
    return x;
  }

  double[] y() {
    return y;
  }

  boolean enough() {
    return size() >= MachineVerdict.LEAST;
  }

  MannKendall trend() {
    return trend;
  }

  /** At least two blocks. */
  ChangePoint change() {
    return ChangePoint.of(y);
  }

  /** Of the whole stretch. */
  TheilSen line() {
    return TheilSen.of(x, y, Interval.CONFIDENCE);
  }

  State state() {
    if (!enough()) {
      return State.TOO_FEW;
    }
    ChangePoint change = change();
    if (trend.pValue() >= ERROR && change.pValue() >= ERROR) {
      return State.STEADY;
    }
    return jumped(change) ? State.JUMPED : State.CREEPING;
  }

  /** The step fits better than the bent line, and either clearly so or its sides are level. */
  private boolean jumped(ChangePoint change) {
    double step = change.residual(y);
    double gain = Hinge.of(x, y).residual() - step;
    return gain > 0 && (gain > CLEARLY * step / size() || levelBeside(change));
  }

  /** No trend before and after the jump in its direction; creep leaves one on both sides. */
  private boolean levelBeside(ChangePoint change) {
    int at = change.at();
    MannKendall within = PooledTrend.test(List.of(new Stretch(blocks.subList(0, at)), from(at)));
    return within.z() * change.step(y) <= 0 || within.pValue() >= 2 * LEVEL_SIDES;
  }

  /** Index of the first block that is not as before; 0 for all from the start, or none. */
  int since() {
    return switch (state()) {
      case JUMPED -> change().at();
      case CREEPING -> Hinge.of(x, y).at();
      default -> 0;
    };
  }

  Stretch from(int index) {
    return new Stretch(blocks.subList(index, size()));
  }

  /** Before and after its jump, if it has one. */
  List<Stretch> parts() {
    if (state() != State.JUMPED) {
      return List.of(this);
    }
    int at = change().at();
    return List.of(new Stretch(blocks.subList(0, at)), from(at));
  }

  /** As at most {@value #MEANS} means. */
  Stretch thinned() {
    Blocks fewer = new Blocks(MEANS);
    blocks.forEach(fewer::add);
    return new Stretch(fewer.all());
  }
}
