package org.chordlog.stats;

import java.util.List;
import java.util.Locale;
import org.chordlog.stats.Blocks.Block;
import org.chordlog.stats.MachineVerdict.State;
import org.jspecify.annotations.Nullable;

/**
 * Steady unless Mann-Kendall or Pettitt refuses it at {@value #ERROR}; then creeping or jumped,
 * whichever of a line and a step leaves the smaller sum of squares. By chance a steady machine of
 * independent pieces is not called steady in at most 1 % of verdicts (Bonferroni).
 */
final class DriftJudge {
  static final double ERROR = 0.005;
  private static final double PER = 1000;
  private final double[] x;
  private final double[] y;
  private final List<Block> blocks;
  private final long pieces;
  private final double ewma;
  private final @Nullable Double tolerance;

  DriftJudge(List<Block> blocks, long pieces, double ewma, @Nullable Double tolerance) {
    this.blocks = blocks;
    this.pieces = pieces;
    this.ewma = ewma;
    this.tolerance = tolerance;
    x = blocks.stream().mapToDouble(Block::at).toArray();
    y = blocks.stream().mapToDouble(Block::mean).toArray();
  }

  MachineVerdict verdict() {
    if (blocks.size() < MachineVerdict.LEAST) {
      String text = "Fewer than " + MachineVerdict.LEAST + " pieces since the last setting.";
      return new MachineVerdict(
          State.TOO_FEW,
          text,
          pieces,
          null,
          null,
          known(ewma),
          known(ewma),
          null,
          null,
          null,
          null,
          null);
    }
    MannKendall trend = MannKendall.of(y);
    ChangePoint change = ChangePoint.of(y);
    TheilSen line = TheilSen.of(x, y, Figures.CONFIDENCE);
    State state = state(trend, change);
    return said(state, trend, change, line);
  }

  private State state(MannKendall trend, ChangePoint change) {
    if (trend.pValue() >= ERROR && change.pValue() >= ERROR) {
      return State.STEADY;
    }
    double aboutLine = LeastSquares.of(x, y).getSumSquaredErrors();
    return change.residual(y) < aboutLine ? State.JUMPED : State.CREEPING;
  }

  private MachineVerdict said(State state, MannKendall trend, ChangePoint change, TheilSen line) {
    boolean jumped = state == State.JUMPED;
    Block since = blocks.get(jumped ? change.at() : 0);
    double step = change.step(y);
    double level =
        state == State.CREEPING ? line.at(x[x.length - 1]) : levelFrom(jumped ? change.at() : 0);
    Double reach = state == State.CREEPING ? reach(line, level) : null;
    TheilSen per =
        new TheilSen(PER * line.slope(), PER * line.lower(), PER * line.upper(), line.intercept());
    return new MachineVerdict(
        state,
        text(state, since, step, per, reach),
        pieces,
        state == State.STEADY ? null : Math.round(since.at()),
        state == State.STEADY ? null : since.atMicros(),
        level,
        known(ewma),
        per,
        trend.pValue(),
        change.pValue(),
        jumped ? step : null,
        reach);
  }

  private double levelFrom(int index) {
    Moments moments = new Moments();
    for (int i = index; i < y.length; i++) {
      moments.add(y[i]);
    }
    return moments.mean();
  }

  private static @Nullable Double known(double value) {
    return Double.isNaN(value) ? null : value;
  }

  /** Null where the line runs away from the tolerance or has no slope. */
  private @Nullable Double reach(TheilSen line, double level) {
    if (tolerance == null || line.slope() == 0) {
      return null;
    }
    double left = (Math.signum(line.slope()) * tolerance - level) / line.slope();
    return Math.max(0, left);
  }

  private static String text(
      State state, Block since, double step, TheilSen per, @Nullable Double reach) {
    String from = " since piece " + Math.round(since.at());
    return switch (state) {
      case JUMPED -> "Jumped by " + percent(step) + from + ".";
      case CREEPING ->
          "Creeping by "
              + percent(per.slope())
              + " per 1,000 pieces ("
              + percent(per.lower())
              + " to "
              + percent(per.upper())
              + ")"
              + from
              + (reach == null
                  ? "."
                  : String.format(Locale.ROOT, "; tolerance reached in about %.0f pieces.", reach));
      default -> "Steady.";
    };
  }

  private static String percent(double part) {
    return String.format(Locale.ROOT, "%+.3f %%", 100 * part);
  }
}
