package org.chordlog.bench;

public final class VerdictRates {
  private VerdictRates() {}

  public static void main(String[] arguments) {
    int jobs = Integer.parseInt(arguments[0]);
    int[] lengths = {25, 30, 40, 50, 75, 100, 150, 200, 300, 500, 1000, 2000};
    for (int size : new int[] {1, 2, 3, 5, 10}) {
      long t = System.nanoTime();
      JobRates rates = new JobRates(size);
      Rate[] r = rates.steady(jobs, 1, lengths);
      System.out.print("size " + size + ":");
      for (int i = 0; i < lengths.length; i++)
        System.out.printf(" %d:%.2f", lengths[i], r[i].percent());
      System.out.printf("  %.0f ns a reading%n", (System.nanoTime() - t) / (double) jobs / 2000);
      System.out.println(
          "  shift at 25 "
              + rates.found(jobs, 2, 25, 12, p -> 1.5)
              + " at 100 "
              + rates.found(jobs, 2, 100, 12, p -> 1.5));
      System.out.println("  creep at 25 " + rates.found(jobs, 3, 25, 40, p -> 0.05 * p));
    }
  }
}
