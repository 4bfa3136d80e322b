package org.chordlog.correction.closing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.chordlog.correction.closing.Arc.Feature;
import org.chordlog.correction.closing.Arc.Fixed;
import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Closed forms of plane geometry; the digits were recomputed in another language, where they were
 * checked against differences and numerical integration. No published source.
 */
final class ClosingTest {
  private static final double TARGET = 1800;

  private static void near(double expected, double found) {
    assertEquals(expected, found, 1e-8 * Math.abs(expected) + 1e-9);
  }

  /** A ring of developed length 2π 1800 bent to R. */
  @ParameterizedTest
  @CsvSource({
    "1788, -75.3982237, -75.3926373, -2.41610738",
    "1799, -6.28318531, -6.28318211, -0.200111173",
    "1801, 6.28318531, 6.28318212, 0.199888951",
    "1812, 75.3982237, 75.3927843, 2.38410596"
  })
  void gapOfARing(double radius, double arcGap, double straightGap, double kink) {
    Ring ring = new Ring(TARGET);
    near(arcGap, ring.arcGapMm(radius));
    near(straightGap, ring.straightGapMm(radius));
    near(kink, ring.kinkDegrees(radius));
    near(radius, ring.radiusFromArcGapMm(ring.arcGapMm(radius)));
    near(radius, ring.radiusFromStraightGapMm(ring.straightGapMm(radius)));
  }

  /** Sensitivities with the length fixed, of chord and rise with the angle fixed, of the end. */
  @ParameterizedTest
  @CsvSource({
    "30, 942.477796, 931.748562, 61.3335127, 0.0118805102, -0.0336844938, 0.51763809,"
        + " 0.0340741737, 0.136037108",
    "90, 2827.43339, 2545.58441, 527.207794, 0.303492828, -0.262467148, 1.41421356, 0.292893219,"
        + " 1.15143756",
    "180, 5654.86678, 3600, 1800, 2, -0.570796327, 2, 1, 3.72419178",
    "270, 8482.30016, 2545.58441, 3072.79221, 4.74637577, 0.0410256794, 1.41421356, 1.70710678,"
        + " 5.79925753"
  })
  void arcs(
      double degrees,
      double developed,
      double chord,
      double rise,
      double chordByLength,
      double riseByLength,
      double chordByAngle,
      double riseByAngle,
      double end) {
    Arc cutBefore = Arc.ofDegrees(TARGET, degrees, Fixed.LENGTH);
    Arc cutAfter = Arc.ofDegrees(TARGET, degrees, Fixed.ANGLE);
    near(developed, cutBefore.developedMm());
    near(chord, cutBefore.valueMm(Feature.CHORD, TARGET));
    near(rise, cutBefore.valueMm(Feature.RISE, TARGET));
    near(chordByLength, cutBefore.sensitivity(Feature.CHORD));
    near(riseByLength, cutBefore.sensitivity(Feature.RISE));
    near(chordByAngle, cutAfter.sensitivity(Feature.CHORD));
    near(riseByAngle, cutAfter.sensitivity(Feature.RISE));
    near(end, cutBefore.sensitivity(Feature.END_OFFSET));
  }

  @Test
  void theRiseSaysNothingAt267Degrees() {
    Arc arc = Arc.ofDegrees(TARGET, 267.1, Fixed.LENGTH);
    assertEquals(0, arc.sensitivity(Feature.RISE), 1e-3);
    assertEquals(Feature.END_OFFSET, arc.mostSensitive());
    BadInput refused = assertThrows(BadInput.class, () -> arc.radiusMm(Feature.RISE, 3060));
    assertTrue(String.valueOf(refused.getMessage()).contains("says nothing"), refused.getMessage());
  }

  @Property
  void aMeasuredFeatureShowsItsRadius(
      @ForAll @DoubleRange(min = 1750, max = 1860) double radius,
      @ForAll @DoubleRange(min = 20, max = 250) double degrees,
      @ForAll Feature feature,
      @ForAll Fixed fixed) {
    Arc arc = Arc.ofDegrees(TARGET, degrees, fixed);
    boolean tells = Math.abs(arc.sensitivity(feature)) > 0.2 * arc.sensitivity(arc.mostSensitive());
    if (tells) {
      assertEquals(radius, arc.radiusMm(feature, arc.valueMm(feature, radius)), 1e-6);
    }
  }

  @Test
  void sensitivitiesAreDerivatives() {
    for (Fixed fixed : Fixed.values()) {
      for (Feature feature : List.of(Feature.CHORD, Feature.RISE)) {
        Arc arc = Arc.ofDegrees(TARGET, 140, fixed);
        double slope =
            (arc.valueMm(feature, TARGET + 0.01) - arc.valueMm(feature, TARGET - 0.01)) / 0.02;
        assertEquals(slope, arc.sensitivity(feature), 1e-6);
      }
    }
  }

  /** Radii 3 mm of their own, 1.2 mm in common, lengths 0.5 mm. */
  @ParameterizedTest
  @CsvSource({"1, 20.3077493", "3, 13.2677871", "4, 12.1109604", "6, 10.8428109"})
  void uncertaintyOfARingOfPieces(int count, double expected) {
    double length = 2 * Math.PI * TARGET / count;
    List<BentPiece> pieces =
        IntStream.range(0, count).mapToObj(i -> new BentPiece("" + i, length, TARGET, 3)).toList();
    near(expected, new RingOfPieces(pieces, 1.2, 0.5).arcGapStandardUncertaintyMm());
  }

  @Test
  void theFourthPieceClosesTheRing() {
    double quarter = Math.PI * TARGET / 2;
    List<BentPiece> bent =
        List.of(
            new BentPiece("1", quarter, 1806, 3),
            new BentPiece("2", quarter, 1804, 3),
            new BentPiece("3", quarter, 1797, 3));
    RingOfPieces ring = new RingOfPieces(bent, 0, 0);
    near(1793.06067, ring.closingRadiusMm(quarter));
    double u = ring.closingStandardUncertaintyMm(quarter);
    assertEquals(3 * Math.sqrt(3), u, 0.06, "three errors of 3 mm fall on one piece");
  }

  @Test
  void aFullCircleLeavesNothingToBend() {
    List<BentPiece> bent = List.of(new BentPiece("", 2 * Math.PI * 1800, 1790, 0));
    assertThrows(BadInput.class, () -> new RingOfPieces(bent, 0, 0).closingRadiusMm(100));
  }

  private static List<BentPiece> quarters(double... radii) {
    return IntStream.range(0, radii.length)
        .mapToObj(i -> new BentPiece("" + (i + 1), Math.PI * TARGET / 2, radii[i], 1))
        .toList();
  }

  /** By hand: 1/1794 + 1/1797 + 1/1803 + 1/1806 is nearest to 4/1800 among all fours. */
  @Test
  void thePiecesThatCloseBestAreJoinedWithLikeOnesOpposite() {
    Joining.Found found = Joining.best(quarters(1794, 1797, 1803, 1806, 1812, 1780), 4);
    assertEquals(
        List.of("1", "2", "3", "4"), found.order().stream().map(BentPiece::name).sorted().toList());
    assertEquals(0, found.kinkDegrees(), 0.01);
    assertTrue(found.openingMm() < 10, found.toString());
  }

  @Property(tries = 30)
  void noOtherOrderClosesBetter(@ForAll @DoubleRange(min = -12, max = 12) double first) {
    List<BentPiece> all = quarters(1800 + first, 1795, 1804, 1809);
    Joining.Found best = Joining.best(all, 4);
    Joining.Found asMeasured = Joining.best(all.subList(0, 4), 4);
    assertEquals(best, asMeasured);
    for (int[] order : new int[][] {{0, 1, 2, 3}, {1, 0, 2, 3}, {2, 1, 0, 3}, {3, 2, 1, 0}}) {
      assertTrue(best.openingMm() <= opening(all, order) + 1e-9);
    }
  }

  /** By summing chords at their own angles. */
  private static double opening(List<BentPiece> all, int[] order) {
    double x = 0;
    double y = 0;
    double heading = 0;
    for (int i : order) {
      double turned = all.get(i).developedMm() / all.get(i).radiusMm();
      double chord = 2 * all.get(i).radiusMm() * Math.sin(turned / 2);
      x += chord * Math.cos(heading + turned / 2);
      y += chord * Math.sin(heading + turned / 2);
      heading += turned;
    }
    return Math.hypot(x, y);
  }

  @Test
  void tooManyArrangementsAreRefused() {
    double[] radii = new double[20];
    java.util.Arrays.fill(radii, 1800);
    assertThrows(BadInput.class, () -> Joining.best(quarters(radii), 8));
    assertEquals(380, Joining.arrangements(20, 2));
  }

  /** δκ = 1e-6 + 3e-6 cos(2πs/S − 0.5) + 2e-6 sin(6πs/S): the ripple does not count. */
  @Test
  void onlyMeanAndFirstHarmonicOpenARing() {
    UnevenRing ring = new UnevenRing(TARGET, 1e-6, 3e-6 * Math.cos(0.5), 3e-6 * Math.sin(0.5));
    near(-0.0113097336, Math.toRadians(ring.kinkDegrees()));
    near(-6.44058696, ring.alongMm());
    near(-14.6398728, ring.acrossMm());
  }

  @Test
  void harmonicsFromEvenlySpacedReadings() {
    List<Double> radii =
        IntStream.range(0, 8)
            .mapToObj(
                i -> {
                  double turned = 2 * Math.PI * (i + 0.5) / 8;
                  double off = 1e-6 + 3e-6 * Math.cos(turned - 0.5) + 2e-6 * Math.sin(3 * turned);
                  return 1 / (1 / TARGET + off);
                })
            .toList();
    UnevenRing ring = UnevenRing.of(TARGET, radii);
    near(1e-6, ring.mean());
    near(3e-6 * Math.cos(0.5), ring.cosine());
    near(3e-6 * Math.sin(0.5), ring.sine());
    assertThrows(BadInput.class, () -> UnevenRing.of(TARGET, radii.subList(0, 1)));
  }

  /** The search for a radius ends there. */
  @Test
  void theGreatestGapAllowedGivesItsRadius() {
    Ring ring = new Ring(1000);
    near(2000, ring.radiusFromStraightGapMm(ring.straightGapMm(2000)));
  }

  /** Beyond an overlap of 0.43 of a turn a smaller radius would give the same straight gap. */
  @ParameterizedTest
  @ValueSource(doubles = {700, 701, 720, 750, 1000})
  void eachRadiusIsFoundByItsStraightGap(double radiusMm) {
    Ring ring = new Ring(1000);
    near(radiusMm, ring.radiusFromStraightGapMm(ring.straightGapMm(radiusMm)));
    assertThrows(BadInput.class, () -> ring.radiusFromStraightGapMm(-1370));
  }

  @Test
  void aRootAtAnEndIsFound() {
    near(1, Root.between(0, 1, x -> x - 1));
    near(1, Root.between(0, 1, x -> 1 - x));
    near(0, Root.between(0, 1, x -> x));
    near(0, Root.between(0, 1, x -> -x));
    near(0.25, Root.between(0, 1, x -> x - 0.25));
    near(0.25, Root.between(0, 1, x -> 0.25 - x));
  }

  /** Each is where the search for an interval may end. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 4, 8, 14})
  void aFeatureAtASearchedPlaceGivesItsRadius(int doublings) {
    Arc arc = Arc.ofDegrees(1000, 90, Fixed.ANGLE);
    double radius = 1000 + 1e-3 * ((1 << doublings) - 1);
    assertEquals(radius, arc.radiusMm(Feature.CHORD, arc.valueMm(Feature.CHORD, radius)), 1e-6);
  }
}
