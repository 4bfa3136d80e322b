package org.chordlog.bench.shopfloor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleBiFunction;
import java.util.function.ToDoubleFunction;
import org.chordlog.bench.shopfloor.Advised.Known;
import org.chordlog.correction.Tuning;

/** A policy over many jobs of a shop; the same seed gives every policy the same jobs. */
public final class Study {
  /** A mean with its standard error. */
  public record Figure(double mean, double error) {
    static Figure of(double[] values) {
      double sum = 0;
      double squares = 0;
      int count = 0;
      for (double value : values) {
        if (!Double.isNaN(value)) {
          sum += value;
          squares += value * value;
          count++;
        }
      }
      double mean = sum / count;
      double variance = (squares - count * mean * mean) / (count - 1);
      return new Figure(mean, Math.sqrt(Math.max(0, variance) / count));
    }

    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%.3f ± %.3f", mean, error);
    }
  }

  /** What came of it, job by job. */
  public record Outcome(List<JobResult> jobs, double optimum, Judgement judgement) {
    Figure figure(ToDoubleFunction<JobResult> value) {
      return Figure.of(jobs.stream().mapToDouble(value).toArray());
    }

    /** Mean square deviation of the true radius over that with the level exactly on target. */
    public Figure loss() {
      return figure(job -> job.meanSquare() / optimum);
    }

    /** What the first piece alone contributes to it. */
    public Figure lossOfFirst() {
      return figure(job -> job.firstSquare() / Shop.PIECES / optimum);
    }

    public Figure badPercent() {
      return figure(job -> 100 * job.badShare());
    }

    public Figure corrections() {
      return figure(JobResult::corrections);
    }

    public Figure firstGood() {
      return figure(JobResult::firstGood);
    }

    public Figure firstGoodAfterLot() {
      return figure(JobResult::firstGoodAfterLot);
    }

    /** Ratio of the mean losses, with the standard error of paired jobs (delta method). */
    public Figure lossOver(Outcome other) {
      return ratio(other, JobResult::meanSquare);
    }

    public Figure badOver(Outcome other) {
      return ratio(other, JobResult::badShare);
    }

    public Figure firstGoodAbove(Outcome other) {
      return difference(other, JobResult::firstGood);
    }

    public Figure firstGoodAfterLotAbove(Outcome other) {
      return difference(other, JobResult::firstGoodAfterLot);
    }

    private Figure ratio(Outcome other, ToDoubleFunction<JobResult> value) {
      double over = other.figure(value).mean();
      double ratio = figure(value).mean() / over;
      Figure residual =
          paired(other, (a, b) -> (value.applyAsDouble(a) - ratio * value.applyAsDouble(b)) / over);
      return new Figure(ratio, residual.error());
    }

    private Figure difference(Outcome other, ToDoubleFunction<JobResult> value) {
      return paired(other, (a, b) -> value.applyAsDouble(a) - value.applyAsDouble(b));
    }

    private Figure paired(Outcome other, ToDoubleBiFunction<JobResult, JobResult> value) {
      double[] values = new double[jobs.size()];
      for (int i = 0; i < values.length; i++) {
        values[i] = value.applyAsDouble(jobs.get(i), other.jobs.get(i));
      }
      return Figure.of(values);
    }
  }

  private final Shop shop;
  private final List<Draws> draws = new ArrayList<>();
  private final double optimum;

  public Study(Shop shop, int jobs, long seed) {
    this.shop = shop;
    for (int job = 0; job < jobs; job++) {
      draws.add(new Draws(shop, seed * 1_000_000L + job));
    }
    optimum = draws.stream().mapToDouble(Draws::optimum).average().orElseThrow();
  }

  /** How a policy is made for each job. */
  public interface Maker {
    Policy policy(Shop shop);
  }

  public Outcome run(Maker maker) {
    List<JobResult> results =
        draws.stream().map(each -> JobRun.of(shop, each, maker.policy(shop))).toList();
    return new Outcome(results, optimum, new Judgement());
  }

  public Outcome advised() {
    return advised(Known.usual(), Tuning.usual());
  }

  public Outcome advised(Known known) {
    return advised(known, Tuning.usual());
  }

  public Outcome advised(Known known, Tuning tuning) {
    Judgement judgement = new Judgement();
    List<JobResult> results = new ArrayList<>();
    for (Draws each : draws) {
      Advised policy = new Advised(shop, known, tuning, judgement);
      results.add(JobRun.of(shop, each, policy));
      policy.end();
    }
    return new Outcome(results, optimum, judgement);
  }
}
