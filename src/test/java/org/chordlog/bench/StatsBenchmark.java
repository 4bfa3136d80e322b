package org.chordlog.bench;

import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.apache.commons.math3.stat.descriptive.SummaryStatistics;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.control.ChartSettings;
import org.chordlog.stats.control.Limits;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.RunRules;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Moments;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Statistics of many values against Commons Math on the same values: compare the times of one
 * {@code count}. {@code allCharts} feeds every chart with all eight run tests.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2)
@Measurement(iterations = 3)
public class StatsBenchmark {
  @Param({"1000000", "10000000"})
  private int count;

  private double[] values = {};

  @Setup
  public void fill() {
    Random random = new Random(1);
    values = random.doubles(count, 1790, 1810).toArray();
  }

  @Benchmark
  public double summaryStatistics() {
    SummaryStatistics statistics = new SummaryStatistics();
    for (double value : values) {
      statistics.addValue(value);
    }
    return statistics.getStandardDeviation();
  }

  @Benchmark
  public double descriptiveStatistics() {
    DescriptiveStatistics statistics = new DescriptiveStatistics();
    for (double value : values) {
      statistics.addValue(value);
    }
    return statistics.getStandardDeviation() + statistics.getMean();
  }

  @Benchmark
  public double running() {
    Moments moments = new Moments();
    for (double value : values) {
      moments.add(value);
    }
    return moments.deviation();
  }

  @Benchmark
  public long allCharts() {
    JobStatistics job = new JobStatistics(plan());
    long id = 0;
    for (double value : values) {
      job.add(new Observation(++id, 1, "middle", id, value, 0));
    }
    return job.count();
  }

  private static StatisticsPlan plan() {
    return new StatisticsPlan(
        "radius",
        "mm",
        new Limits(1788.0, 1812.0, 1800.0),
        List.of("middle"),
        new SubgroupRule(SubgroupRule.Kind.CONSECUTIVE, 5),
        ChartSettings.usual().withRunRules(RunRules.nelson()));
  }
}
