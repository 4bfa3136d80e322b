package org.chordlog.bench;

import java.util.Arrays;
import java.util.List;
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

/**
 * Simulated jobs of normal readings, and what the verdict on control says of them: the very class
 * that the statistics of a job use, fed with the same points.
 */
public final class JobRates {
  private final int size;
  private final double correlation;
  private final StatisticsPlan plan;

  /**
   * Readings in a subgroup, 1 for single readings; correlation of neighbouring readings, 0 for
   * independent ones.
   */
  public JobRates(int size, double correlation) {
    this.size = size;
    this.correlation = correlation;
    SubgroupRule.Kind kind =
        size == 1 ? SubgroupRule.Kind.INDIVIDUAL : SubgroupRule.Kind.CONSECUTIVE;
    plan =
        new StatisticsPlan(
            "radius",
            "mm",
            Limits.NONE,
            List.of("middle"),
            new SubgroupRule(kind, size),
            ChartSettings.usual());
  }

  /** Looks that say "not in control", at each of the lengths, counted in readings. */
  public Rate[] steady(int jobs, long seed, int... lengths) {
    Rate[] rates = new Rate[lengths.length];
    Arrays.setAll(rates, at -> new Rate());
    for (int job = 0; job < jobs; job++) {
      Run run = new Run(seed + job, point -> 0, point -> 1);
      for (int at = 0; at < lengths.length; at++) {
        run.upTo(lengths[at]);
        rates[at].add(run.notInControl());
      }
    }
    return rates;
  }

  /**
   * Jobs that are called within so many points of a change of level after {@code before} points, in
   * standard deviations of a point; the argument counts points since then from 1.
   */
  public Rate found(int jobs, long seed, int before, int within, IntToDoubleFunction change) {
    return found(jobs, seed, before, within, change, 1);
  }

  /** The same with a scatter so many times as large from then on. */
  public Rate found(
      int jobs, long seed, int before, int within, IntToDoubleFunction change, double scatter) {
    Rate rate = new Rate();
    for (int job = 0; job < jobs; job++) {
      Run run =
          new Run(
              seed + job,
              point -> point > before ? change.applyAsDouble(point - before) : 0,
              point -> point > before ? scatter : 1);
      rate.add(run.calledBetween(before, before + within));
    }
    return rate;
  }

  /** One job; the level of a point is in standard deviations of a point. */
  private final class Run {
    private final Well19937c random;
    private final IntToDoubleFunction level;
    private final IntToDoubleFunction scatter;
    private final ControlWatch watch = new ControlWatch(plan);
    private final Subgrouper subgrouper = new Subgrouper(plan.subgroups());
    private double noise;
    private int readings;

    Run(long seed, IntToDoubleFunction level, IntToDoubleFunction scatter) {
      random = new Well19937c(seed);
      this.level = level;
      this.scatter = scatter;
    }

    boolean calledBetween(int before, int last) {
      upTo(before * size);
      boolean called = false;
      for (int point = before + 1; point <= last && !called; point++) {
        upTo(point * size);
        called = notInControl();
      }
      return called;
    }

    void upTo(int length) {
      while (readings < length) {
        int point = readings++ / size + 1;
        double own = Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
        noise = readings == 1 ? random.nextGaussian() : correlation * noise + own;
        double value =
            scatter.applyAsDouble(point) * noise
                + level.applyAsDouble(point) / Math.sqrt((double) size);
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
