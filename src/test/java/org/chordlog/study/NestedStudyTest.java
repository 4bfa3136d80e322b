package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.study.Simulated.Sigmas;
import org.junit.jupiter.api.Test;

/** Operators with parts of their own. */
final class NestedStudyTest {
  /** Two operators, two parts each, two repeats: sums of squares by hand. */
  private static List<StudyReading> byHand() {
    double[][][] values = {{{1, 3}, {5, 7}}, {{4, 6}, {10, 12}}};
    List<StudyReading> readings = new ArrayList<>();
    for (int j = 0; j < 2; j++) {
      for (int i = 0; i < 2; i++) {
        for (int k = 0; k < 2; k++) {
          String name = "P" + (i + 1);
          readings.add(new StudyReading(name, "", "O" + j, k + 1, 0, values[j][i][k]));
        }
      }
    }
    return readings;
  }

  /**
   * Means 2, 6 | 5, 11; operators 4, 8; whole 6: between 4·(4 + 4), parts 2·(8 + 18), repeats 8.
   */
  @Test
  void sumsOfSquaresByHand() {
    StudyResult result = NestedStudy.of(byHand(), false, StudySettings.usual());
    assertEquals(32, StudyData.row(result, "operator").sumOfSquares(), 1e-12);
    assertEquals(52, StudyData.row(result, "piece in operator").sumOfSquares(), 1e-12);
    assertEquals(8, StudyData.row(result, "repeat").sumOfSquares(), 1e-12);
    assertEquals(92, StudyData.row(result, "total").sumOfSquares(), 1e-12);
    assertEquals(Math.sqrt(2), StudyData.value(result, "EV"), 1e-12);
    assertEquals(Math.sqrt(12), StudyData.value(result, "PV"), 1e-12, "(26 − 2)/2");
    assertEquals(Math.sqrt(1.5), StudyData.value(result, "AV"), 1e-12, "(32 − 26)/4");
  }

  @Test
  void otherPiecesMakeItAnUpperBound() {
    StudyResult result = NestedStudy.of(byHand(), true, StudySettings.usual());
    assertTrue(result.cautions().get(0).contains("the gauge is at most"));
    assertEquals(4, result.size().parts(), "two of each operator");
  }

  /** Limits so narrow that the whole interval is beyond them: it is the pieces that may be. */
  @Test
  void anUpperBoundNeverFails() {
    List<StudyReading> readings = new Simulated(1).nested(4, 5, 3, new Sigmas(0.6, 0.4, 0, 0.3));
    assertEquals(StudyVerdict.FAILS, ofTolerance(readings, false, 0.1));
    assertEquals(StudyVerdict.UNDECIDED, ofTolerance(readings, true, 0.1));
    assertEquals(StudyVerdict.PASSES, ofTolerance(readings, true, 1e6));
    StudySettings narrow = StudySettings.usual().with(Tolerance.ofWidth(0.1));
    assertEquals(
        StudyVerdict.UNDECIDED, NestedStudy.of(readings, true, narrow).conclusion().verdict());
  }

  private static StudyVerdict ofTolerance(
      List<StudyReading> readings, boolean otherPieces, double width) {
    StudySettings settings = StudySettings.usual().with(Tolerance.ofWidth(width));
    StudyResult result = NestedStudy.of(readings, otherPieces, settings);
    StudyFigure gauge = StudyData.figure(result.figures(), "percentToleranceGRR");
    return Objects.requireNonNull(gauge.judged()).verdict();
  }

  @Test
  void oneRepeatIsRefused() {
    List<StudyReading> single = byHand().stream().filter(r -> r.repeat() == 1).toList();
    BadInput refused =
        assertThrows(BadInput.class, () -> NestedStudy.of(single, false, StudySettings.usual()));
    assertTrue(
        String.valueOf(refused.getMessage()).startsWith("repeat: 1 is too few"),
        refused.getMessage());
  }

  /** Operators that differ less than their pieces would make them: an estimate far below 0. */
  @Test
  void theGaugeIsNeverSaidToBeBetterThanItsRepeatability() {
    for (int seed = 1; seed <= 100; seed++) {
      List<StudyReading> readings = new Simulated(seed).nested(3, 5, 3, new Sigmas(2, 0, 0, 0.3));
      StudyResult result = NestedStudy.of(readings, false, StudySettings.usual());
      assertTrue(StudyData.lower(result, "GRR") >= StudyData.lower(result, "EV"), "seed " + seed);
      assertTrue(StudyData.upper(result, "GRR") >= StudyData.upper(result, "EV"), "seed " + seed);
    }
  }
}
