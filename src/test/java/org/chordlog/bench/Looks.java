package org.chordlog.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** Times of looks at jobs of different lengths, taken in turns; a row of the budgets at the end. */
final class Looks {
  static final int LOOKS = 41;
  private static final int WARM = 20;
  private static final double BUDGET_MILLIS = 50;
  private static final double BUDGET_RATIO = 2;

  /** Differences below this are the clock's and the scheduler's, not the job's length. */
  private static final double NOISE_MILLIS = 0.5;

  interface Look {
    void at(GrowthLoad.Grown job) throws Exception;
  }

  private final List<GrowthLoad.Grown> jobs;
  private final List<BudgetRow> rows = new ArrayList<>();

  Looks(List<GrowthLoad.Grown> jobs) {
    this.jobs = jobs;
  }

  void at(String what, Look look) throws Exception {
    double[][] took = new double[jobs.size()][LOOKS];
    for (int i = -WARM; i < LOOKS; i++) {
      for (int job = 0; job < jobs.size(); job++) {
        long start = System.nanoTime();
        look.at(jobs.get(job));
        took[job][Math.max(0, i)] = GrowthLoad.millis(start);
      }
    }
    double[] medians = Arrays.stream(took).mapToDouble(StoreLoad::median).toArray();
    for (int job = 0; job < medians.length; job++) {
      System.out.printf("%s, %s readings: %.2f ms%n", what, count(job), medians[job]);
    }
    rows.add(row(what, medians));
  }

  private BudgetRow row(String what, double[] medians) {
    double shortest = medians[0];
    double longest = medians[medians.length - 1];
    boolean flat = longest <= BUDGET_RATIO * shortest || longest - shortest < NOISE_MILLIS;
    return new BudgetRow(
        "a job of " + count(jobs.size() - 1) + " readings: " + what,
        String.format(Locale.ROOT, "%.2f ms", longest),
        String.format(Locale.ROOT, "%.2f ms (job of %s)", shortest, count(0)),
        longest / shortest,
        "within 2 ×, under 50 ms",
        flat && longest < BUDGET_MILLIS);
  }

  private String count(int job) {
    return String.format(Locale.ROOT, "%,d", jobs.get(job).readings());
  }

  void print() {
    rows.forEach(BudgetRow::print);
  }
}
