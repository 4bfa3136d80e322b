package org.chordlog.stats.control;

import java.util.Locale;
import java.util.stream.Collectors;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * How the charts of a job are made. Limits freeze by themselves after {@code baselinePoints} points
 * of a phase (0: only on request). With {@code aimAtTarget} EWMA and CUSUM start from the target
 * instead of the phase's mean. {@code standard}, if given, is used instead of any estimate.
 */
public record ChartSettings(
    RunRules runRules,
    int baselinePoints,
    Spread spread,
    Ewma ewma,
    Cusum cusum,
    boolean aimAtTarget,
    @Nullable Standard standard) {
  /** Smoothing constant, limits at ± that many sigma, asymptotic or exact. */
  public record Ewma(double lambda, double width, boolean asymptotic) {
    public Ewma {
      Check.within("lambda", lambda, 1e-3, 1);
      Check.positive("width", width);
    }
  }

  /** Reference value and decision interval in sigma of a point; head start as a part of it. */
  public record Cusum(double reference, double decisionInterval, double headStart) {
    public Cusum {
      Check.notNegative("reference", reference);
      Check.positive("decisionInterval", decisionInterval);
      Check.within("headStart", headStart, 0, 0.99);
    }
  }

  /** A known mean and standard deviation of single values. */
  public record Standard(double mean, double standardDeviation) {
    public Standard {
      Check.finite("mean", mean);
      Check.positive("standardDeviation", standardDeviation);
    }
  }

  public ChartSettings {
    Check.within("baselinePoints", baselinePoints, 0, 1_000_000);
  }

  /** Tests 1, 2, 5 and 6 of Nelson, 25 points of baseline, ranges, EWMA 0.2/2.962, CUSUM 0.5/5. */
  public static ChartSettings usual() {
    return new ChartSettings(
        RunRules.only(
            RunTest.BEYOND_LIMIT, RunTest.SAME_SIDE, RunTest.NEAR_LIMIT, RunTest.OFF_CENTRE),
        25,
        Spread.RANGE,
        new Ewma(0.2, 2.962, false),
        new Cusum(0.5, 5, 0.5),
        false,
        null);
  }

  /** All parameters of the charts, in one sentence. */
  public String sentence() {
    String tests =
        runRules.counts().keySet().stream()
            .map(test -> String.valueOf(test.number()))
            .collect(Collectors.joining(", "));
    String baseline =
        baselinePoints == 0
            ? "Limits rest on all points"
            : "Limits rest on the first "
                + baselinePoints
                + " points, anew after each correction, lot or set-up";
    return String.format(
        Locale.ROOT,
        "%s; run tests %s (Nelson 1984). EWMA: λ %s, limits ± %s σ%s. CUSUM: k %s, h %s, head"
            + " start %s (in σ of a point).",
        baseline,
        tests.isEmpty() ? "none" : tests,
        ewma.lambda(),
        ewma.width(),
        ewma.asymptotic() ? " (asymptotic)" : "",
        cusum.reference(),
        cusum.decisionInterval(),
        cusum.headStart() * cusum.decisionInterval());
  }

  /** The same with other run tests. */
  public ChartSettings withRunRules(RunRules rules) {
    return new ChartSettings(rules, baselinePoints, spread, ewma, cusum, aimAtTarget, standard);
  }

  /** The same with limits from that many points. */
  public ChartSettings withBaselinePoints(int points) {
    return new ChartSettings(runRules, points, spread, ewma, cusum, aimAtTarget, standard);
  }

  /** The same with another estimate of the spread within subgroups. */
  public ChartSettings withSpread(Spread changed) {
    return new ChartSettings(runRules, baselinePoints, changed, ewma, cusum, aimAtTarget, standard);
  }

  /** The same with another weight and width of the EWMA. */
  public ChartSettings withEwma(Ewma changed) {
    return new ChartSettings(
        runRules, baselinePoints, spread, changed, cusum, aimAtTarget, standard);
  }

  /** The same with another allowance and limit of the CUSUM. */
  public ChartSettings withCusum(Cusum changed) {
    return new ChartSettings(
        runRules, baselinePoints, spread, ewma, changed, aimAtTarget, standard);
  }

  /** The same, centred on the target or on the mean. */
  public ChartSettings withAimAtTarget(boolean aim) {
    return new ChartSettings(runRules, baselinePoints, spread, ewma, cusum, aim, standard);
  }

  /** The same with centre and sigma given, null to estimate them. */
  public ChartSettings withStandard(@Nullable Standard given) {
    return new ChartSettings(runRules, baselinePoints, spread, ewma, cusum, aimAtTarget, given);
  }
}
