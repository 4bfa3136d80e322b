package org.chordlog.bench;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.notify.rule.Found;
import org.chordlog.notify.rule.MachineJudgement;
import org.chordlog.notify.rule.MachineLimits;
import org.chordlog.notify.rule.MachineStreaks;
import org.chordlog.stats.drift.MachineStatistics;

/**
 * A simulated machine of independent normal pieces whose statistics, judgements and rule are those
 * of the service. Jobs begin with a set-up, which puts the level near the target; the operator
 * corrects by the mean of the newest five where that is off by so much. Invented.
 */
final class AlertShop {
  private static final double SIGMA = 1e-3;
  private static final int NEWEST = 5;

  /**
   * How a shop works. {@code job}: pieces of a job (0: one endless job); {@code whenOff}: in
   * standard deviations, 0 for never; {@code cp}: the tolerance over six of them; {@code creep}: in
   * standard deviations per 100 pieces, from piece {@code creepFrom} on.
   */
  record Way(int job, double setUpSigma, double whenOff, double cp, double creep, int creepFrom) {
    static Way jobs(int pieces) {
      return new Way(pieces, 0.3, 0, 1.33, 0, 0);
    }

    Way corrected(double off) {
      return new Way(job, setUpSigma, off, cp, creep, creepFrom);
    }

    Way withCp(double other) {
      return new Way(job, setUpSigma, whenOff, other, creep, creepFrom);
    }

    Way creeping(double perHundred, int from) {
      return new Way(job, setUpSigma, whenOff, cp, perHundred, from);
    }
  }

  private final Way way;
  private final Well19937c random;
  private final MachineStatistics machine = new MachineStatistics();
  private final MachineLimits limits;
  private final double[] newest = new double[NEWEST];
  private final Set<AlertKind> open = EnumSet.noneOf(AlertKind.class);
  private MachineStreaks streaks = MachineStreaks.NONE;
  private double setting;
  private int since;
  private int piece;
  private long events;
  private long judgements;
  private long moved;

  AlertShop(Way way, long seed) {
    this.way = way;
    this.random = new Well19937c(seed);
    this.limits = new MachineLimits(1, 3 * way.cp * SIGMA);
  }

  /** One more piece; the kinds that are told after it. */
  Set<AlertKind> bend() {
    piece++;
    if (way.job > 0 && (piece - 1) % way.job == 0) {
      setUp();
    }
    correct();
    double value = level() + setting + SIGMA * random.nextGaussian();
    newest[piece % NEWEST] = value;
    since++;
    machine.add(1 + (way.job > 0 ? (piece - 1) / way.job : 0), piece, piece * 1_000_000L, value);
    machine.endPiece();
    return piece % MachineStreaks.PIECES == 0 ? judge() : Set.of();
  }

  private Set<AlertKind> judge() {
    MachineJudgement now =
        new MachineJudgement("m", machine.verdict(limits.relative()), limits, piece);
    judgements++;
    moved += machine.verdict(limits.relative()).findings().isEmpty() ? 0 : 1;
    streaks = streaks.after(now);
    Set<AlertKind> told = EnumSet.noneOf(AlertKind.class);
    Optional<Found> appeared = streaks.appeared(now, open);
    appeared
        .map(each -> each.key().kind())
        .filter(kind -> !open.contains(kind))
        .ifPresent(told::add);
    open.removeAll(streaks.gone());
    open.removeAll(MachineStreaks.replaced(now, appeared));
    open.addAll(told);
    return told;
  }

  private double level() {
    return way.creep * SIGMA * Math.max(0, piece - way.creepFrom) / 100;
  }

  private void setUp() {
    happened(JobEvent.Kind.SET_UP);
    setting = -level() + way.setUpSigma * SIGMA * random.nextGaussian();
  }

  private void correct() {
    double off = 0;
    for (double each : newest) {
      off += each / NEWEST;
    }
    if (way.whenOff > 0 && since >= NEWEST && Math.abs(off) > way.whenOff * SIGMA) {
      happened(JobEvent.Kind.CORRECTION);
      setting -= off;
    }
  }

  private void happened(JobEvent.Kind kind) {
    since = 0;
    machine.happened(
        new JobEvent(
            ++events,
            1,
            "m",
            kind,
            piece - 1,
            new JobEvent.Content(null, null, "", ""),
            new Recorded(piece * 1_000_000L, "me")));
  }

  int piece() {
    return piece;
  }

  /** Whether the verdict of now names something that moves the machine. */
  boolean verdictMoved() {
    return !machine.verdict(null).findings().isEmpty();
  }

  long judgements() {
    return judgements;
  }

  /** Judgements whose verdict said that something moved, whether it matters or not. */
  long moved() {
    return moved;
  }
}
