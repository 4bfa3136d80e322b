package org.chordlog.bench;

import java.util.Set;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.ControlWatch;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Point;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.control.Subgrouper;

/** Simulated jobs of independent normal readings, and what the verdict on control says of them. */
public final class JobRates {
  private final int size;
  private final StatisticsPlan plan;

  /** Readings in a subgroup; 1 for single readings. */
  public JobRates(int size) {
    this.size = size;
    SubgroupRule.Kind kind =
        size == 1 ? SubgroupRule.Kind.INDIVIDUAL : SubgroupRule.Kind.CONSECUTIVE;
    plan =
        new StatisticsPlan(
            "radius",
            "mm",
            Limits.NONE,
            java.util.List.of("middle"),
            new SubgroupRule(kind, size),
            ChartSettings.usual());
  }

  /** Looks that say "not in control", at each of the lengths, counted in readings. */
  public Rate[] steady(int jobs, long seed, int... lengths) {
    Rate[] rates = new Rate[lengths.length];
    java.util.Arrays.setAll(rates, at -> new Rate());
    for (int job = 0; job < jobs; job++) {
      Run run = new Run(seed + job, point -> 0);
      for (int at = 0; at < lengths.length; at++) {
        run.upTo(lengths[at]);
        rates[at].add(run.notInControl());
      }
    }
    return rates;
  }

  /** Jobs that are called within so many points of a change after {@code before} points. */
  public Rate found(int jobs, long seed, int before, int within, IntToDoubleFunction change) {
    Rate rate = new Rate();
    for (int job = 0; job < jobs; job++) {
      Run run =
          new Run(seed + job, point -> point > before ? change.applyAsDouble(point - before) : 0);
      run.upTo(before * size);
      boolean called = false;
      for (int point = 1; point <= within && !called; point++) {
        run.upTo((before + point) * size);
        called = run.notInControl();
      }
      rate.add(called);
    }
    return rate;
  }

  /** One job; the level of a point is in standard deviations of a point. */
  private final class Run {
    private final Well19937c random;
    private final IntToDoubleFunction level;
    private final ControlWatch watch = new ControlWatch(plan);
    private final Subgrouper subgrouper = new Subgrouper(plan.subgroups());
    private int readings;

    Run(long seed, IntToDoubleFunction level) {
      random = new Well19937c(seed);
      this.level = level;
    }

    void upTo(int length) {
      while (readings < length) {
        int point = ++readings / size + (readings % size == 0 ? 0 : 1);
        double value = random.nextGaussian() + level.applyAsDouble(point) / Math.sqrt(size);
        add(new Observation(readings, readings, "middle", readings, value, 0));
      }
    }

    private void add(Observation seen) {
      Point point = size == 1 ? Point.single(seen, "") : subgrouper.add(seen, "");
      if (point != null) {
        watch.add(point);
      }
    }

    boolean notInControl() {
      return watch.verdict(Set.of()).notInControl();
    }
  }
}
