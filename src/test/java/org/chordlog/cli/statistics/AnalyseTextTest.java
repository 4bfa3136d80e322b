package org.chordlog.cli.statistics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.chordlog.cli.common.ExitCode;
import org.chordlog.harness.Ran;
import org.junit.jupiter.api.Test;

/** What analyse prints for people, and its exit code. */
final class AnalyseTextTest extends AnalyseRuns {
  @Test
  void textTellsSignalsAndExitCodeSaysSo() throws IOException {
    Ran ran = run("value\n" + "5\n6\n".repeat(20) + "30\n", "--usl", "20", "--tests", "1");
    assertEquals(ExitCode.FAULT, ran.code());
    assertTrue(
        ran.out().contains("point 41 (30): beyond a control limit, above (test 1)"), ran.out());
    assertTrue(ran.out().contains("Caution: One specification limit"), ran.out());
  }

  /** Lengths have the digits of pages and reports; in inches two more. */
  @Test
  void digitsAreThoseOfTheUnit() throws IOException {
    String rows = "\n70.123456\n70.234567\n70.345678\n";
    String mm = run("radius_mm" + rows).out();
    assertTrue(mm.contains("Mean, mm") && mm.contains("   70.23  "), mm);
    assertTrue(mm.contains("Standard deviation, overall, mm       0.111  "), mm);
    String inch = run("radius" + rows, "--unit", "inch").out();
    assertTrue(inch.contains("Mean, in") && inch.contains("   70.2346  "), inch);
    assertTrue(inch.contains("Standard deviation, overall, in     0.11111  "), inch);
    assertTrue(run("radius" + rows).out().contains("   70.23457  "));
  }

  /** Tests 1, 2, 5 and 6 alone break in most such files; the exit code says so in few. */
  @Test
  void exitCodeOfSteadyFiles() throws IOException {
    int faults = 0;
    for (int seed = 1; seed <= 60; seed++) {
      java.util.Random random = new java.util.Random(seed);
      StringBuilder csv = new StringBuilder("x\n");
      for (int i = 0; i < 200; i++) {
        csv.append("%.4f%n".formatted(100 + random.nextGaussian()));
      }
      faults += run(csv.toString(), "--json").code() == ExitCode.FAULT ? 1 : 0;
    }
    assertTrue(faults <= 8, faults + " of 60");
  }

  @Test
  void parametersOfTheChartsAreTold() throws IOException {
    String out = run("x\n1\n2\n3\n").out();
    assertTrue(out.contains("EWMA: λ 0.2, limits ± 2.962 σ"), out);
    assertTrue(out.contains("CUSUM: k 0.5, h 5.0, head start 2.5"), out);
  }

  @Test
  void aFallIsToldWithTheSumThatSawIt() throws IOException {
    StringBuilder csv = new StringBuilder("x\n");
    for (int i = 0; i < 40; i++) {
      csv.append(i < 30 ? 10 + i % 2 : 4 + i % 2).append('\n');
    }
    String out = run(csv.toString(), "--baseline", "20").out();
    String cusum = out.substring(out.indexOf("CUSUM, 40 points"));
    String first =
        cusum.lines().filter(each -> each.contains("below (test 1)")).findFirst().orElse("");
    assertFalse(first.isEmpty() || first.contains("(0)"), out);
  }
}
