package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.BadInput;
import org.chordlog.study.TypeOneStudy.Inputs;
import org.junit.jupiter.api.Test;

/**
 * Cg and Cgk on constructed data (no published data set was found); conventions of ISO 22514-7's
 * annex, figures recomputed with 50 digits.
 */
final class TypeOneStudyTest {
  private static final double[] READINGS = {
    6.001, 6.002, 6.001, 6.001, 6.002, 6.001, 6.001, 6.000, 5.999, 6.001, 6.001, 6.000, 6.001,
    6.002, 6.002, 6.001, 6.002, 6.002, 6.002, 6.002, 6.000, 6.002, 6.000, 5.999, 6.002
  };

  @Test
  void sixSigmas() {
    StudyResult result =
        TypeOneStudy.of(READINGS, new Inputs(0.06, 6.002, 0.001, 20, 6), StudySettings.usual());
    assertEquals(6.00108, StudyData.value(result, "mean"), 5e-9);
    assertEquals(0.0009539, StudyData.value(result, "standardDeviation"), 5e-8);
    assertEquals(-0.00092, StudyData.value(result, "bias"), 1e-9);
    assertEquals(2.09657, StudyData.value(result, "Cg"), 5e-6);
    assertEquals(1.77510, StudyData.value(result, "Cgk"), 5e-6);
    assertEquals(20 / 2.09657, StudyData.value(result, "percentRepeatability"), 5e-5);
    assertEquals(-4.8221, StudyData.test(result, "bias").statistic(), 5e-5);
    assertTrue(result.cautions().get(0).startsWith("Resolution is 1.67 % of the tolerance, with"));
  }

  @Test
  void fourSigmas() {
    StudyResult result =
        TypeOneStudy.of(READINGS, new Inputs(0.06, 6.002, null, 20, 4), StudySettings.usual());
    assertEquals(3.14485, StudyData.value(result, "Cg"), 5e-6);
    assertEquals(2.66264, StudyData.value(result, "Cgk"), 5e-6);
  }

  /** 25 readings leave Cg 2.10 between 1.5 and 2.7: passes, by the interval. */
  @Test
  void theVerdictIsByTheInterval() {
    Inputs wide = Inputs.usual(0.06, 6.002);
    StudyResult passes = TypeOneStudy.of(READINGS, wide, StudySettings.usual());
    assertEquals(1.5, StudyData.lower(passes, "Cg"), 0.02);
    assertEquals(StudyVerdict.UNDECIDED, passes.conclusion().verdict(), "Cgk's lower end 1.25");
    StudyResult fails = TypeOneStudy.of(READINGS, Inputs.usual(0.02, 6.002), StudySettings.usual());
    assertEquals(StudyVerdict.FAILS, fails.conclusion().verdict());
    StudyResult larger =
        TypeOneStudy.of(READINGS, Inputs.usual(0.12, 6.002), StudySettings.usual());
    assertEquals(StudyVerdict.PASSES, larger.conclusion().verdict());
  }

  /** A bias of more than its share leaves nothing: the index is below 0, its percentage unknown. */
  @Test
  void aBiasOutsideTheShare() {
    StudyResult result =
        TypeOneStudy.of(READINGS, Inputs.usual(0.06, 6.012), StudySettings.usual());
    assertTrue(StudyData.value(result, "Cgk") < 0);
    assertTrue(StudyData.figure(result.figures(), "percentRepeatabilityAndBias").value() == null);
  }

  @Test
  void oneLimitHasNoWidth() {
    assertThrows(BadInput.class, () -> TypeOneStudy.width(new Tolerance(1.0, null)));
  }
}
