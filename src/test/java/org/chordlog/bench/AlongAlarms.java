package org.chordlog.bench;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.Uniformity;
import org.chordlog.stats.AlongMeasure;
import org.chordlog.stats.AlongStatistics;

/**
 * How often the charts along the pieces of a steady job say "not in control". A pool of pieces runs
 * through the simulated line and is evaluated as the service does it; the pieces of each job are
 * drawn from one pool, since those of a steady job differ by chance alone. The standard error is
 * that among pools, which holds what the jobs of one pool have in common.
 */
public final class AlongAlarms {
  private static final int[] LOOKED_AT = {25, 40, 100};

  private final LineSetting setting;
  private final int size;
  private final Map<AlongMeasure, List<double[]>> shares = new EnumMap<>(AlongMeasure.class);

  private AlongAlarms(LineSetting setting, int size) {
    this.setting = setting;
    this.size = size;
    for (AlongMeasure measure : AlongMeasure.values()) {
      shares.put(measure, new ArrayList<>());
    }
  }

  /** Pools, pieces and jobs of each, seed. */
  public static void main(String[] args) {
    int pools = args.length > 0 ? Integer.parseInt(args[0]) : 8;
    int size = args.length > 1 ? Integer.parseInt(args[1]) : 800;
    long seed = args.length > 2 ? Long.parseLong(args[2]) : 15;
    say(
        "%d pools of %d pieces and as many jobs; not in control, %% of jobs ± standard error%n",
        pools, size);
    say(
        "| span | wander %% | measure | after 25 | after 40 | after 100 |%n|---|---|---|---|---|---|%n");
    line(100, 0.1, pools, size, seed);
    line(200, 0.1, pools, size, seed + 100);
    line(200, 0.3, pools, size, seed + 200);
    line(500, 0.1, pools, size, seed + 300);
  }

  private static void line(int span, double wander, int pools, int size, long seed) {
    AlongAlarms alarms =
        new AlongAlarms(LineSetting.of(span, 20, 100, 3000).withWander(wander), size);
    for (int pool = 0; pool < pools; pool++) {
      alarms.pool(new Random(seed + pool));
    }
    for (AlongMeasure measure : AlongMeasure.values()) {
      say("| %d | %.1f | %s |%s%n", span, wander, measure.title(), alarms.row(measure));
    }
  }

  private void pool(Random random) {
    LineTrial trial = new LineTrial(setting);
    List<Uniformity> pool = new ArrayList<>();
    while (pool.size() < size) {
      if (trial.run(random).outcomes().get(0) instanceof Measured measured) {
        pool.add(measured.result().uniformity());
      }
    }
    shares.values().forEach(each -> each.add(new double[LOOKED_AT.length]));
    for (int job = 0; job < size; job++) {
      job(pool, random);
    }
  }

  private void job(List<Uniformity> pool, Random random) {
    AlongStatistics along = new AlongStatistics();
    for (int i = 0; i < LOOKED_AT.length; i++) {
      while (along.count() < LOOKED_AT[i]) {
        along.add(piece((int) along.count() + 1, pool.get(random.nextInt(pool.size()))));
      }
      for (AlongMeasure measure : AlongMeasure.values()) {
        List<double[]> of = shares.get(measure);
        of.get(of.size() - 1)[i] += along.control(measure).notInControl() ? 100.0 / size : 0;
      }
    }
  }

  private static AlongStatistics.Piece piece(int number, Uniformity even) {
    return new AlongStatistics.Piece(
        number,
        number,
        number,
        even.rangePercent(),
        even.trendPercent(),
        even.trendUncertaintyPercent());
  }

  private String row(AlongMeasure measure) {
    StringBuilder row = new StringBuilder();
    for (int i = 0; i < LOOKED_AT.length; i++) {
      row.append(cell(shares.get(measure), i));
    }
    return row.toString();
  }

  private static String cell(List<double[]> pools, int at) {
    int n = pools.size();
    double mean = pools.stream().mapToDouble(each -> each[at]).average().orElseThrow();
    double squares = pools.stream().mapToDouble(each -> Math.pow(each[at] - mean, 2)).sum();
    return String.format(Locale.ROOT, " %.1f ± %.1f |", mean, Math.sqrt(squares / (n - 1) / n));
  }

  private static void say(String format, Object... values) {
    System.out.printf(Locale.ROOT, format, values);
  }
}
