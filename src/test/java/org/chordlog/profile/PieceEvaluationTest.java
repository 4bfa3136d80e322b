package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Specification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class PieceEvaluationTest extends PieceEvaluations {

  @Test
  void aHoopOf1800() {
    PieceResult result = result(HOOP);
    Edge start = Objects.requireNonNull(result.zone().start());
    assertEquals(273, start.placeMm(), 5, "from where touch began, 6 mm behind the front");
    assertTrue(start.riseMm() >= 80, "the rise errs towards too long: " + start);
    assertTrue(result.zone().fromMm() >= 280 + 40 + 100 - 4, result.zone().toString());
    assertTrue(result.zone().toMm() <= 2720 - 40 - 100, result.zone().toString());
    assertTrue(result.zone().lengthMm() > 2050, result.zone().toString());
    assertEquals(1800, Objects.requireNonNull(result.mean().radius().radiusMm()), 0.05);
    assertEquals(0, result.uniformity().trendPercent(), 0.01);
    assertEquals(List.of(), result.marks());
    assertEquals(Decision.NO_LIMITS, result.inside().decision());
  }

  /** U is that of the set-up alone when nothing scatters: more samples buy nothing. */
  @Test
  void theUncertaintyIsWhatAllPlacesShare() {
    PieceResult result = result(HOOP);
    double common =
        Streams.model()
            .estimateOfMean(result.mean().depthNm(), 0.0, 0.0)
            .standardUncertaintyPerMm();
    assertEquals(common, result.mean().radius().standardUncertaintyPerMm(), 0.01 * common);
  }

  @Test
  void curvatureThatGrowsAlongThePiece() {
    PieceResult result = result(s -> HOOP.applyAsDouble(s) * (1 + 0.02 * (s - 1500) / 3000));
    double share = result.zone().lengthMm() / 3000;
    assertEquals(2 * share, result.uniformity().trendPercent(), 0.02);
    assertEquals(2 * share, result.uniformity().rangePercent(), 0.1);
    double end = Objects.requireNonNull(result.uniformity().endPercent());
    assertTrue(end > 0.6 && end < 0.8, "end less rest " + end);
    assertEquals(-end, Objects.requireNonNull(result.uniformity().startPercent()), 0.05);
    assertEquals(1800, Objects.requireNonNull(result.mean().radius().radiusMm()), 0.2);
  }

  @Test
  void theLocalRadiusOfEachPlace() {
    PieceResult result = result(s -> HOOP.applyAsDouble(s) * (1 + 0.02 * (s - 1500) / 3000));
    for (LocalRadius place : result.places()) {
      double expected = 1800 / (1 + 0.02 * (place.placeMm() - 1497) / 3000);
      assertEquals(expected, Objects.requireNonNull(place.radius().radiusMm()), 0.4);
    }
  }

  /** A bump shows up, half down at either foot, and adds nothing to the mean. */
  @Test
  void aBumpOnTheFaceIsMarkedAndStays() {
    DoubleUnaryOperator bump = s -> Math.abs(s - 1600) <= 5 ? 0.1 : 0;
    Streams plain = Streams.usual().piece(3000, HOOP);
    plain.rate = 100;
    Streams bumped = Streams.usual();
    bumped.rate = 100;
    Streams shape = Streams.usual().piece(3000, HOOP);
    bumped.depths(
        s ->
            shape.depthAt(s)
                + (s < 100 || s > 2900
                    ? 0
                    : bump.applyAsDouble(s)
                        - bump.applyAsDouble(s - 100) / 2
                        - bump.applyAsDouble(s + 100) / 2));
    PieceResult without = Streams.measured(Streams.evaluated(plain.go(3300, 100).only()));
    PieceResult with = Streams.measured(Streams.evaluated(bumped.go(3300, 100).only()));
    assertEquals(List.of(PieceMark.Kind.BUMP), marks(with));
    PieceMark mark = with.marks().get(0);
    assertEquals(1597, mark.placeMm(), 8);
    assertEquals(0.1, mark.amount(), 0.02);
    assertTrue(mark.words().toString().startsWith("bump of 0.1"), mark.toString());
    assertEquals(without.mean().bendPerMm(), with.mean().bendPerMm(), 2e-5 / 1800);
    assertEquals(without.mean().samplePerMm(), with.mean().samplePerMm(), 1e-9);
    assertTrue(with.places().stream().anyMatch(LocalRadius::marked));
  }

  @Test
  void lengthsKnownAreUsedAndComparedWithTheFit() {
    KnownLengths known = new KnownLengths(3000.0, 400.0, 280.0, 80.0, null);
    Streams stream = Streams.usual().piece(3000, HOOP);
    PieceResult result =
        Streams.measured(
            new PieceEvaluation(Streams.settings(LengthSource.CHANNEL, known))
                .of(stream.go(3300, 100).only()));
    assertEquals(400 + 40 + 100 + 10, result.zone().fromMm(), 1e-6);
    assertEquals(List.of(PieceMark.Kind.EDGES_DISAGREE), marks(result));
  }

  @Test
  void anEdgeBeforeAllThatIsSeenIsFittedByItsRest() {
    PieceResult result = result(Streams.bent(3000, 60, 60, 1800));
    assertEquals(false, Objects.requireNonNull(result.zone().start()).seen());
    assertTrue(result.zone().fromMm() >= 60 + 30 + 100 - 4, result.zone().toString());
    assertEquals(1800, Objects.requireNonNull(result.mean().radius().radiusMm()), 0.3);
  }

  @ParameterizedTest
  @CsvSource({
    // level %, 400 mm that much more %, by mean, everywhere
    "0, 0, CONFORMS, CONFORMS",
    "0.3, 0, CONFORMS, CONFORMS",
    "0.667, 0, UNDECIDED, UNDECIDED",
    "1.2, 0, DOES_NOT_CONFORM, DOES_NOT_CONFORM",
    "0, 1.2, CONFORMS, DOES_NOT_CONFORM",
    "0, 0.7, CONFORMS, UNDECIDED"
  })
  void byTheMeanAndEverywhere(double level, double more, Decision byMean, Decision everywhere) {
    DoubleUnaryOperator curvature =
        s -> {
          double bump = Math.max(0, Math.min(1, (300 - Math.abs(s - 1500)) / 100));
          return HOOP.applyAsDouble(s) * (1 + level / 100 + more / 100 * bump);
        };
    PieceRun run = Streams.usual().piece(3000, curvature).go(3300, 100).only();
    Specification limits = new Specification(Face.OUTER, 1800, 1788.0, 1812.0);
    for (DecideBy by : DecideBy.values()) {
      PieceResult result =
          Streams.measured(
              new PieceEvaluation(
                      Streams.settings(LengthSource.CHANNEL, KnownLengths.NONE, limits, by))
                  .of(run));
      LengthInside inside = result.inside();
      assertEquals(byMean, inside.byMean());
      assertEquals(everywhere, inside.everywhere());
      assertEquals(
          switch (by) {
            case MEAN -> byMean;
            case EVERYWHERE -> everywhere;
            case BOTH -> everywhere;
          },
          inside.decision());
      checkStretch(inside, everywhere, more);
    }
  }

  private static void checkStretch(LengthInside inside, Decision everywhere, double more) {
    if (everywhere == Decision.DOES_NOT_CONFORM) {
      assertNotNull(inside.longestOutside());
    }
    if (everywhere == Decision.CONFORMS) {
      assertNull(inside.longestOutside());
      assertEquals(1, inside.shareInside());
    }
    if (more > 1) {
      LengthInside.Stretch stretch = Objects.requireNonNull(inside.longestOutside());
      assertTrue(stretch.fromMm() < 1500 && stretch.toMm() > 1500, stretch.toString());
      assertEquals(400, stretch.toMm() - stretch.fromMm(), 130);
    }
  }
}
