package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.capability.Caution.Kind;
import org.chordlog.stats.control.ControlState;
import org.chordlog.stats.control.ControlVerdict;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.control.Subgrouper;
import org.chordlog.stats.math.Window;

/** What a reader of the figures must know. */
final class Cautions {
  /** At fewer a Cpk's 95 % interval is wider than about ± 20 % (Bissell). */
  static final int ENOUGH = 50;

  /** Part of the tolerance beyond which a known bias is said. */
  private static final double BIAS_SHARE = 0.05;

  private static final String LENGTH = "mm";

  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final ControlVerdict control;
  private final Subgrouper.Waiting waiting;
  private final List<Caution> cautions = new ArrayList<>();

  Cautions(
      StatisticsPlan plan, Evidence evidence, ControlVerdict control, Subgrouper.Waiting waiting) {
    this.plan = plan;
    this.evidence = evidence;
    this.control = control;
    this.waiting = waiting;
  }

  List<Caution> all() {
    count();
    limits();
    control();
    gauge();
    say(
        evidence.shape().refused(),
        Kind.NOT_NORMAL,
        "The readings are not normal (Anderson-Darling, 5 %): " + insteadOfNormal());
    return cautions;
  }

  private String insteadOfNormal() {
    return evidence.shape().fitted() == null
        ? "Cp, Cpk, Pp, Ppk don't hold for them, and no other shape fits them."
        : "use the percentile indices instead of Cp, Cpk, Pp, Ppk.";
  }

  private void count() {
    long n = evidence.values().n();
    say(n == 0, Kind.NO_DATA, "There are no readings.");
    say(
        n > 0 && n < ENOUGH,
        Kind.TOO_FEW,
        counted(n, "reading")
            + ": indices are uncertain below "
            + ENOUGH
            + "; look at their intervals.");
    say(
        n > 1 && evidence.values().sumOfSquares() == 0,
        Kind.NO_VARIATION,
        "All readings are equal: spread and indices can't be told. The gauge may be too coarse.");
    say(waiting.readings() > 0, Kind.SUBGROUP_INCOMPLETE, incomplete());
    say(
        !evidence.shapeOfAll(),
        Kind.NEWEST_ONLY,
        "Normality, fitted percentiles and resolution rest on the newest "
            + Window.SIZE
            + " readings; all other figures on all of them.");
  }

  private String incomplete() {
    boolean one = waiting.readings() == 1;
    String which =
        one ? "The newest reading is" : "The newest " + waiting.readings() + " readings are";
    String their = one ? " its " : " their ";
    int size = waiting.rule().size();
    int missing = size - waiting.readings();
    return which
        + " not on the charts yet: "
        + (waiting.rule().kind() == SubgroupRule.Kind.PIECE
            ? their.strip() + " piece is not complete."
            : missing
                + (missing == 1 ? " more completes" : " more complete")
                + their
                + "subgroup of "
                + size
                + ".");
  }

  private void limits() {
    boolean low = plan.limits().lower() != null;
    boolean high = plan.limits().upper() != null;
    say(!low && !high, Kind.NO_LIMITS, "No specification limits: capability can't be told.");
    say(
        low != high,
        Kind.ONE_LIMIT,
        "One specification limit: Cp and Pp need both, Cpk and Ppk are for that side.");
  }

  private void control() {
    if (control.state() instanceof ControlState.NotInControl not) {
      cautions.add(
          new Caution(
              Kind.NOT_IN_CONTROL,
              Sentence.of(
                  "Not in control since piece %d: indices tell of the past and promise nothing.",
                  not.spells().get(0).since().piece())));
    }
    double bound = 2 / Math.sqrt((double) evidence.values().n());
    say(
        evidence.values().n() >= 20 && evidence.lagOne() > bound,
        Kind.AUTOCORRELATED,
        "Neighbouring readings are alike (lag-1 autocorrelation above 2/√n): sigma within and"
            + " control limits come out too narrow.");
  }

  private void gauge() {
    say(
        evidence.gaugeTooCoarse(),
        Kind.GAUGE_TOO_COARSE,
        String.format(
            Locale.ROOT,
            "The gauge is too coarse for this tolerance: six of its standard deviations take %.0f"
                + " %% of it, more than 30 %%. Indices come out too low.",
            100 * evidence.gaugeShare()));
    bias();
    double step = smallestStep();
    Estimate within = evidence.within();
    say(
        within != null && step > within.sigma() && evidence.values().sumOfSquares() > 0,
        Kind.RESOLUTION_VISIBLE,
        "The readings come in steps wider than sigma within: the resolution is visible, sigma and"
            + " limits are doubtful.");
  }

  private void bias() {
    Double lower = plan.limits().lower();
    Double upper = plan.limits().upper();
    double bias = evidence.gaugeBias();
    if (lower != null && upper != null && Math.abs(bias) > BIAS_SHARE * (upper - lower)) {
      Sentence text =
          Sentence.of(
              "Set by hand, the bridge is never quite in line with the bend: readings come out"
                  + " about %s too %s in the mean. Mean and indices include that.",
              size(Math.abs(bias)), bias < 0 ? "small" : "large");
      cautions.add(new Caution(Kind.GAUGE_BIAS, text));
    }
  }

  /** A length as one, so that it is said in the reader's unit. */
  private Object size(double value) {
    return plan.unit().equals(LENGTH)
        ? Quantity.uncertainty(value)
        : String.format(Locale.ROOT, "%.3g %s", value, plan.unit()).strip();
  }

  private double smallestStep() {
    double[] distinct = Arrays.stream(evidence.shape().values()).sorted().distinct().toArray();
    double step = Double.POSITIVE_INFINITY;
    for (int i = 1; i < distinct.length; i++) {
      step = Math.min(step, distinct[i] - distinct[i - 1]);
    }
    return distinct.length > 1 && evidence.values().n() >= 10 ? step : 0;
  }

  private static String counted(long count, String thing) {
    return count + " " + thing + (count == 1 ? "" : "s");
  }

  private void say(boolean so, Kind kind, String text) {
    if (so) {
      cautions.add(new Caution(kind, Sentence.plain(text)));
    }
  }
}
