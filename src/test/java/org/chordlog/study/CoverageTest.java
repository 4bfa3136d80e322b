package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.study.Coverage.Counts;
import org.chordlog.study.Coverage.Design;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Short forms of {@code bench.StudyCoverage}, which has the figures (2,000 studies a design, each
 * coverage with a standard error of 0.5 %): every interval from fixed seeds.
 */
final class CoverageTest {
  /** Of 8 intervals at 95 % fewer than 4 hold the truth in 15 of a million cases. */
  @Test
  void noIntervalIsGrosslyWrong() {
    assertEachHolds(8, 50);
  }

  /** The standard error of 95 % is 2.8 %; the bound is somewhat over four of them below. */
  @Tag("long")
  @Test
  void everyIntervalHoldsTheTruthAsOftenAsItSays() {
    assertEachHolds(60, 83);
  }

  private static void assertEachHolds(int studies, double leastPercent) {
    List<String> low = new ArrayList<>();
    int looked = 0;
    for (Design design : CoverageDesigns.all()) {
      Map<String, Counts> counts = Coverage.of(design, studies, 1);
      looked += counts.size();
      counts.forEach(
          (name, of) -> {
            if (of.percent() < leastPercent) {
              low.add(design.name() + ": " + name + " " + of.percent() + " %");
            }
          });
    }
    assertTrue(looked > 100, looked + " intervals");
    assertTrue(low.isEmpty(), low.toString());
  }
}
