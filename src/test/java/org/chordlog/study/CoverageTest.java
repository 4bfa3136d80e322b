package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.chordlog.study.Coverage.Counts;
import org.chordlog.study.Coverage.Design;
import org.junit.jupiter.api.Test;

/**
 * The short form of {@code bench.StudyCoverage}: 60 studies a design from fixed seeds. The standard
 * error of 95 % is 2.8 %, so only a gross fault shows here; the program has the figures.
 */
final class CoverageTest {
  private static final int STUDIES = 60;

  /** Somewhat over four standard errors below 95 %. */
  private static final double LEAST = 83;

  @Test
  void everyIntervalHoldsTheTruthAsOftenAsItSays() {
    List<String> low = new ArrayList<>();
    int looked = 0;
    for (Design design : CoverageDesigns.all()) {
      Map<String, Counts> counts = Coverage.of(design, STUDIES, 1);
      looked += counts.size();
      counts.forEach(
          (name, of) -> {
            if (of.percent() < LEAST) {
              low.add(design.name() + ": " + name + " " + of.percent() + " %");
            }
          });
    }
    assertTrue(looked > 100, looked + " intervals");
    assertTrue(low.isEmpty(), low.toString());
  }
}
