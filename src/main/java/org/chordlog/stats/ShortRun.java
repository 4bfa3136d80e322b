package org.chordlog.stats;

import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.StatisticsPlan;

/**
 * Small jobs of one machine on one individuals chart: deviation from nominal, or standardised
 * deviation for jobs whose scatter differs (ISO 7870-8, charts for short runs). Feed the readings
 * of all jobs in the order of their ids.
 */
public final class ShortRun {
  /** Name of the one characteristic. */
  public static final String CHARACTERISTIC = "machine";

  /**
   * Tests 1 and 2 of Nelson: on a baseline of 25 points more tests cry wolf more than they find.
   */
  public static final RunRules RULES = RunRules.only(RunTest.BEYOND_LIMIT, RunTest.SAME_SIDE);

  /** What is plotted. */
  public enum Basis {
    DEVIATION,
    STANDARDISED
  }

  /** Nominal of a job and the standard deviation expected of it. */
  public record Part(double nominal, double sigma) {
    public Part {
      Check.finite("nominal", nominal);
      Check.positive("sigma", sigma);
    }

    /** Sigma as a sixth of the tolerance: 1 then is a job of Cp = 1. */
    public static Part of(Limits limits) {
      Double lower = limits.lower();
      Double upper = limits.upper();
      Double target = limits.target();
      if (lower == null || upper == null) {
        throw new BadInput("limits", limits, "have no width", "both specification limits");
      }
      return new Part(target == null ? (lower + upper) / 2 : target, (upper - lower) / 6);
    }
  }

  private final Basis basis;
  private final JobStatistics pooled;
  private int jobs;

  /** {@code unit} is that of the readings. */
  public ShortRun(Basis basis, String unit, ChartSettings charts) {
    this.basis = basis;
    boolean plain = basis == Basis.DEVIATION;
    pooled =
        new JobStatistics(
            new StatisticsPlan(
                plain ? "deviation from nominal" : "standardised deviation",
                plain ? unit : "sigma",
                new Limits(null, null, 0.0),
                List.of(CHARACTERISTIC),
                new SubgroupRule(SubgroupRule.Kind.INDIVIDUAL, 1),
                charts));
  }

  /** Takes in the next reading of a part. */
  public void add(Observation seen, Part part) {
    double scale = basis == Basis.DEVIATION ? 1 : part.sigma();
    pooled.add(
        new Observation(
            seen.readingId(),
            seen.piece(),
            CHARACTERISTIC,
            seen.atMicros(),
            (seen.value() - part.nominal()) / scale,
            seen.standardUncertainty() / scale,
            seen.bias() / scale));
  }

  /** One more job takes part; it may turn out to have no readings. */
  public void joined() {
    jobs++;
  }

  /** How many jobs take part. */
  public int jobs() {
    return jobs;
  }

  /** The pooled chart, its events, exclusions and figures. */
  public JobStatistics statistics() {
    return pooled;
  }
}
