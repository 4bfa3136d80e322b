package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Placing by eye against marks. */
final class PlacingStudyTest {
  private static List<StudyReading> repeats(double half) {
    return StudyData.crossed(
        new double[][][] {{{5 - half, 5 + half}}, {{7 - half, 7 + half}}, {{6 - half, 6 + half}}});
  }

  /** Variance of ± h about a mean is 2h²: by eye 0.18, on marks 0.02. */
  @Test
  void theDifferenceOfVariances() {
    StudyResult result = PlacingStudy.of(repeats(0.3), repeats(0.1), StudySettings.usual());
    assertEquals(Math.sqrt(0.18), StudyData.value(result, "byEye"), 1e-12);
    assertEquals(Math.sqrt(0.02), StudyData.value(result, "marked"), 1e-12);
    assertEquals(0.4, StudyData.value(result, "placing"), 1e-12);
    assertTrue(StudyData.upper(result, "placing") > 1, "three repeats say little");
  }

  /** The place found by eye is what the shop has, so that is what a budget has to cover. */
  @Test
  void theBudgetIsComparedWithPlacingByEye() {
    StudyResult result = PlacingStudy.of(repeats(0.3), repeats(0.1), StudySettings.usual());
    BudgetComparison compared =
        BudgetComparison.of(BudgetComparison.figure(result).orElseThrow(), 0.2);
    assertEquals(Math.sqrt(0.18) / 0.2, compared.ratio(), 1e-12);
    assertTrue(compared.caution());
    assertTrue(compared.says().endsWith("leaves out, such as finding the place by eye."));
  }

  @Test
  void lessByEyeThanOnMarksIsToldAsNothing() {
    StudyResult result = PlacingStudy.of(repeats(0.1), repeats(0.3), StudySettings.usual());
    assertEquals(0, StudyData.value(result, "placing"));
    assertTrue(result.cautions().get(0).contains("told as 0"));
  }
}
