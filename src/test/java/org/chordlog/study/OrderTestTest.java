package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.study.StudyDesign.Step;
import org.junit.jupiter.api.Test;

/** Parts that spring or relax while they are measured are found by the order of measuring. */
final class OrderTestTest {
  private static final StudyDesign DESIGN =
      new StudyDesign(
          List.of("1", "2", "3", "4", "5", "6", "7", "8"), List.of(), List.of("A", "B", "C"), 2);

  /** Operators differ by 0.3; each reading of a part relaxes it by {@code step}. */
  private static List<StudyReading> measured(double step, long seed) {
    double[] noise = new Simulated(seed).normal(48, 0, 0.05);
    int[] taken = new int[9];
    List<StudyReading> readings = new ArrayList<>();
    for (Step each : DESIGN.steps(seed)) {
      int part = Integer.parseInt(each.part());
      double operator = 0.3 * (each.operator().charAt(0) - 'A');
      double value = part + operator + step * taken[part]++ + noise[(int) each.order() - 1];
      readings.add(each.reading(value));
    }
    return readings;
  }

  @Test
  void aPartThatRelaxesLeadsToTheNestedDesign() {
    StudyResult result = CrossedStudy.of(measured(-0.1, 4), StudySettings.usual());
    StudyTest order = StudyData.test(result, "order of measuring");
    assertTrue(order.found(), order.toString());
    assertTrue(order.statistic() < 0);
    assertEquals(7, order.degreesOfFreedom());
    assertTrue(result.cautions().stream().anyMatch(text -> text.contains("nested design")));
  }

  /** At its level of 5 %: 300 studies of parts at rest, standard error 1.3 %. */
  @Test
  void atRestItFindsAsOftenAsItsLevelSays() {
    int found = 0;
    for (long seed = 1; seed <= 300; seed++) {
      found += OrderTest.of(measured(0, seed)).orElseThrow().found() ? 1 : 0;
    }
    assertTrue(found >= 4 && found <= 28, found + " of 300");
  }

  @Test
  void withoutAnOrderTheRepeatsStandForIt() {
    StudyResult result =
        CrossedStudy.of(StudyData.readings("parts-appraisers-trials.csv"), StudySettings.usual());
    StudyTest order = StudyData.test(result, "order of repeats");
    assertEquals(29, order.degreesOfFreedom(), "30 cells");
    assertFalse(order.found());
  }
}
