package org.chordlog.stats.drift;

import java.util.List;
import org.chordlog.stats.drift.MachineVerdict.State;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/**
 * The verdict on a machine: what the stretch since its rollers were last set says; where that
 * refuses nothing, the trend pooled over the settings before, as long as the newest does not
 * contradict it. By chance a steady machine of independent pieces is not called steady in at most 1
 * % of verdicts.
 */
final class DriftJudge {
  static final double PER = 1000;
  private final Stretch present;
  private final EarlierSettings earlier;
  private final long pieces;
  private final double ewma;
  private final @Nullable Double tolerance;

  DriftJudge(
      Stretch present,
      EarlierSettings earlier,
      long pieces,
      double ewma,
      @Nullable Double tolerance) {
    this.present = present;
    this.earlier = earlier;
    this.pieces = pieces;
    this.ewma = ewma;
    this.tolerance = tolerance;
  }

  MachineVerdict verdict() {
    return switch (present.state()) {
      case JUMPED -> jumped();
      case CREEPING -> creeping();
      default -> quiet();
    };
  }

  private MachineVerdict jumped() {
    int at = present.since();
    double step = present.change().step(present.y());
    String text = VerdictText.jumped(step, present.blocks().get(at));
    Block since = present.blocks().get(at);
    return said(State.JUMPED, text, since, level(at), present.line(), trendPValue(), step, null);
  }

  /** The line is that of the pieces from where it began, if they are enough for one. */
  private MachineVerdict creeping() {
    int at = present.since();
    Stretch own = present.from(at).enough() ? present.from(at) : present;
    TheilSen line = own.line();
    double level = line.at(own.x()[own.size() - 1]);
    return creeping(present.blocks().get(at), line, level, trendPValue(), false);
  }

  private MachineVerdict creeping(
      Block since, TheilSen line, @Nullable Double level, double pValue, boolean set) {
    Double reach = level == null ? null : reach(line, level);
    String text = VerdictText.creeping(line.per(PER), since, set, reach);
    return said(State.CREEPING, text, since, level, line, pValue, null, reach);
  }

  private MachineVerdict quiet() {
    List<Stretch> all = earlier.and(present);
    if (!earlier.isEmpty()
        && PooledTrend.possible(all)
        && !earlier.contradictedBy(present)
        && PooledTrend.of(all).pValue() < PooledTrend.ERROR) {
      return throughSettings(PooledTrend.of(all));
    }
    return present.enough()
        ? said(
            State.STEADY,
            VerdictText.STEADY,
            null,
            level(0),
            present.line(),
            trendPValue(),
            null,
            null)
        : said(State.TOO_FEW, VerdictText.TOO_FEW, null, known(ewma), null, null, null, null);
  }

  private MachineVerdict throughSettings(PooledTrend trend) {
    Double level =
        present.size() < 2
            ? known(ewma)
            : (Double) trend.line().at(present.x()[present.size() - 1]);
    return creeping(earlier.since(), trend.line(), level, trend.pValue(), true);
  }

  private MachineVerdict said(
      State state,
      String text,
      @Nullable Block since,
      @Nullable Double level,
      @Nullable TheilSen line,
      @Nullable Double trendPValue,
      @Nullable Double step,
      @Nullable Double reach) {
    return new MachineVerdict(
        state,
        text,
        pieces,
        since == null ? null : (Long) Math.round(since.at()),
        since == null ? null : (Long) since.atMicros(),
        level,
        known(ewma),
        line == null ? null : line.per(PER),
        trendPValue,
        present.enough() ? (Double) present.change().pValue() : null,
        step,
        reach);
  }

  private double trendPValue() {
    return present.trend().pValue();
  }

  private double level(int index) {
    Moments moments = new Moments();
    for (int i = index; i < present.size(); i++) {
      moments.add(present.y()[i]);
    }
    return moments.mean();
  }

  private static @Nullable Double known(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }

  /** Null where there is no tolerance or no slope. */
  private @Nullable Double reach(TheilSen line, double level) {
    if (tolerance == null || line.slope() == 0) {
      return null;
    }
    double left = (Math.signum(line.slope()) * tolerance - level) / line.slope();
    return Math.max(0, left);
  }
}
