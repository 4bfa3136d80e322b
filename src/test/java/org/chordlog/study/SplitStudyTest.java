package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.study.Simulated.Sigmas;
import org.chordlog.study.Simulated.SplitSigmas;
import org.chordlog.study.SplitStudy.Places;
import org.junit.jupiter.api.Test;

/** Pieces, places on them, operators and repeats. */
final class SplitStudyTest {
  private static final SplitSigmas SIGMAS = new SplitSigmas(new Sigmas(1, 0.5, 0.3, 0.2), 1.2, 0.4);
  private static final List<StudyReading> NAMED = new Simulated(5).split(6, 3, 3, 2, SIGMAS, true);

  /** The lines add up, as sums of squares of a balanced design do. */
  @Test
  void linesAddUpToTheTotal() {
    StudyResult result = SplitStudy.of(NAMED, Places.AS_NAMED, StudySettings.usual());
    double[] values = NAMED.stream().mapToDouble(StudyReading::value).toArray();
    AnovaRow total = StudyData.row(result, "total");
    assertEquals(Means.squares(values), total.sumOfSquares(), 1e-9);
    assertEquals(values.length - 1.0, total.degreesOfFreedom());
    assertEquals(2, StudyData.row(result, "name of place").degreesOfFreedom());
    assertEquals(10, StudyData.row(result, "place on piece").degreesOfFreedom());
  }

  /** A common difference of 0.5 from place to place is not the places' scatter. */
  @Test
  void theNamesOfPlacesAreTakenOut() {
    StudyResult named = SplitStudy.of(NAMED, Places.AS_NAMED, StudySettings.usual());
    StudyResult marks = SplitStudy.of(NAMED, Places.MARKS, StudySettings.usual());
    double out = StudyData.row(named, "name of place").sumOfSquares();
    assertEquals(
        StudyData.row(marks, "place on piece").sumOfSquares(),
        StudyData.row(named, "place on piece").sumOfSquares() + out,
        1e-9);
    assertTrue(marks.anova().stream().noneMatch(row -> row.source().equals("name of place")));
    assertEquals(StudyData.value(named, "GRR"), StudyData.value(marks, "GRR"), 1e-12);
  }

  /** Variation along the piece is the product's, not the gauge's. */
  @Test
  void placesCountAsProduct() {
    StudyResult result = SplitStudy.of(NAMED, Places.AS_NAMED, StudySettings.usual());
    double piece = StudyData.value(result, "PVpiece");
    double place = StudyData.value(result, "PVplace");
    assertEquals(Math.hypot(piece, place), StudyData.value(result, "PV"), 1e-12);
    double gauge = 0;
    for (String symbol : List.of("EV", "AV", "IA", "IAplace")) {
      gauge += Math.pow(StudyData.value(result, symbol), 2);
    }
    assertEquals(Math.sqrt(gauge), StudyData.value(result, "GRR"), 1e-12);
  }

  /** Components estimated from expected mean squares are the components. */
  @Test
  void expectationsGiveTheComponentsBack() {
    SplitAnova.Variances given = new SplitAnova.Variances(1, 2, 3, 4, 5, 6);
    VarianceComponents found =
        SplitAnova.expected(new SplitAnova.Size(6, 3, 4, 2), given).components();
    double[] wanted = {6, 5, 4, 3, 2, 1};
    for (int i = 0; i < wanted.length; i++) {
      assertEquals(wanted[i], found.components().get(i).variance(), 1e-9);
    }
  }

  @Test
  void thePieceIsTestedByAQuasiRatio() {
    StudyResult result = SplitStudy.of(NAMED, Places.MARKS, StudySettings.usual());
    AnovaRow piece = StudyData.row(result, "piece");
    double above = mean(result, "piece") + mean(result, "place × operator");
    double below = mean(result, "place on piece") + mean(result, "piece × operator");
    assertEquals(above / below, piece.f() == null ? 0 : piece.f(), 1e-12);
    assertNull(StudyData.row(result, "repeat").f());
  }

  private static double mean(StudyResult result, String source) {
    Double mean = StudyData.row(result, source).meanSquare();
    return mean == null ? Double.NaN : mean;
  }
}
