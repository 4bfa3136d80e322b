package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.study.StudyDesign.Step;
import org.chordlog.study.StudyPlanner.Assumed;
import org.chordlog.study.StudyPlanner.Option;
import org.junit.jupiter.api.Test;

/** How large a study has to be, and in which order it is measured. */
final class StudyPlanningTest {
  private static final StudySettings USUAL = StudySettings.usual();

  /** What is planned for is what studies then do: 60 simulated ones, standard error 5 %. */
  @Test
  void theRecommendedDesignDecides() {
    Option option = StudyPlanner.fewest(Assumed.usual(8), 0, 400, USUAL).orElseThrow();
    assertTrue(option.chance() >= StudyPlanner.CHANCE);
    double gauge = 0.0064;
    double part = Math.sqrt(1 - gauge);
    Simulated.Sigmas sigmas =
        new Simulated.Sigmas(
            part, Math.sqrt(0.4 * gauge), Math.sqrt(0.1 * gauge), Math.sqrt(0.5 * gauge));
    int decided = 0;
    for (long seed = 1; seed <= 60; seed++) {
      List<StudyReading> readings =
          new Simulated(seed).crossed(option.parts(), option.operators(), option.repeats(), sigmas);
      StudyFigure percent =
          StudyData.figure(CrossedStudy.of(readings, USUAL).figures(), "percentGRR");
      Double upper = percent.upper();
      decided += upper != null && upper <= 30 ? 1 : 0;
    }
    assertTrue(decided >= 40, decided + " of 60 for " + option);
  }

  @Test
  void aCloserLimitNeedsMoreReadingsAndTooCloseIsSaid() {
    int far = StudyPlanner.fewest(Assumed.usual(5), 0, 400, USUAL).orElseThrow().readings();
    int near = StudyPlanner.fewest(Assumed.usual(12), 0, 400, USUAL).orElseThrow().readings();
    assertTrue(far < near, far + " " + near);
    assertTrue(StudyPlanner.fewest(Assumed.usual(29), 0, 400, USUAL).isEmpty());
    assertTrue(StudyPlanner.says(null, Assumed.usual(29), 30).contains("too near the limit"));
    assertThrows(BadInput.class, () -> Assumed.usual(100));
  }

  @Test
  void placesMakeASplitDesign() {
    Option option = StudyPlanner.of(Assumed.usual(10), 8, 3, 4, 2, USUAL);
    assertEquals(8 * 3 * 4 * 2, option.readings());
    assertTrue(option.gaugePercent().lower() < 10 && option.gaugePercent().upper() > 10);
  }

  @Test
  void everyCellComesOnceARoundInAnOrderDrawnFromTheSeed() {
    StudyDesign design =
        new StudyDesign(List.of("1", "2", "3"), List.of("a", "b"), List.of("A", "B"), 3);
    List<Step> steps = design.steps(9);
    assertEquals(36, steps.size());
    assertEquals(
        36,
        steps.stream()
            .map(step -> step.repeat() + step.operator() + step.part() + step.place())
            .collect(Collectors.toSet())
            .size());
    for (int i = 0; i < 36; i++) {
      assertEquals(i + 1, steps.get(i).order());
      assertEquals(i / 12 + 1, steps.get(i).repeat(), "round by round");
      assertEquals(steps.get(i / 6 * 6).operator(), steps.get(i).operator(), "one after another");
    }
    assertEquals(steps, design.steps(9));
    assertNotEquals(steps, design.steps(10));
  }

  @Test
  void namesHaveToBeThereOnce() {
    assertThrows(
        BadInput.class, () -> new StudyDesign(List.of("1", "1"), List.of(), List.of("A"), 1));
    assertThrows(BadInput.class, () -> new StudyDesign(List.of(), List.of(), List.of("A"), 1));
    assertThrows(BadInput.class, () -> new StudyDesign(List.of("1"), List.of(), List.of("A"), 0));
  }
}
