package org.chordlog.stats;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.Caution.Kind;

/** What a reader of the figures must know. */
final class Cautions {
  /** Fewer give a Cpk whose 95 % interval is wider than about ± 20 % (Bissell). */
  static final int ENOUGH = 50;

  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final long signalling;
  private final int waiting;
  private final List<Caution> cautions = new ArrayList<>();

  Cautions(StatisticsPlan plan, Evidence evidence, long signalling, int waiting) {
    this.plan = plan;
    this.evidence = evidence;
    this.signalling = signalling;
    this.waiting = waiting;
  }

  List<Caution> all() {
    long n = evidence.values().n();
    say(n == 0, Kind.NO_DATA, "There are no readings yet.");
    say(n > 0 && n < ENOUGH, Kind.TOO_FEW, few(n));
    say(
        n > 1 && evidence.values().sumOfSquares() == 0,
        Kind.NO_VARIATION,
        "All readings are equal: no spread, and so no index, can be told. The indicator may be too coarse.");
    limits();
    say(
        signalling > 0,
        Kind.NOT_IN_CONTROL,
        signalling
            + " point(s) of the chart break a run test: the process is not in control, so indices describe the past and promise nothing.");
    say(
        waiting > 0,
        Kind.SUBGROUP_INCOMPLETE,
        waiting + " reading(s) wait for their subgroup to fill and are not on its charts yet.");
    return cautions;
  }

  private void limits() {
    boolean low = plan.limits().lower() != null;
    boolean high = plan.limits().upper() != null;
    say(
        !low && !high,
        Kind.NO_LIMITS,
        "No specification limits are given: capability can't be told.");
    say(
        low != high,
        Kind.ONE_LIMIT,
        "Only one specification limit is given: Cp and Pp need both, Cpk and Ppk are for that side.");
  }

  private static String few(long n) {
    return "Only "
        + n
        + " readings: capability indices are uncertain below "
        + ENOUGH
        + "; look at the interval.";
  }

  private void say(boolean so, Kind kind, String text) {
    if (so) {
      cautions.add(new Caution(kind, text));
    }
  }
}
