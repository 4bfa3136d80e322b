package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.BadInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Geometry against integers, published examples and recomputed tables. */
final class ChordTest {
  private static double radius(double depth, double span, double foot) {
    return 1 / Chord.curvaturePerMm(depth, span, foot);
  }

  /** R = a²/2h + h/2 with Pythagorean triples: exact. */
  @ParameterizedTest
  @CsvSource({
    "6, 1, 5",
    "8, 2, 5",
    "10, 1, 13",
    "14, 1, 25",
    "18, 1, 41",
    "22, 1, 61",
    "66, 9, 65",
    "112, 32, 65",
    "120, 20, 100",
    "12, 2, 10",
    "200, 1, 5000.5",
    "102, 1, 1301"
  })
  void triples(double span, double depth, double expected) {
    assertEquals(expected, radius(depth, span, 0), expected * 3e-16);
    assertEquals(-expected, radius(-depth, span, 0), expected * 3e-16);
    assertEquals(depth, Chord.depthMm(1 / expected, span, 0), depth * 1e-13);
  }

  /** Ball feet, own computation by placing balls on the circle: convex smaller, concave larger. */
  @ParameterizedTest
  @CsvSource({
    "120, 5, 95, 20.000000000, 22.917960675",
    "150, 3, 500, 5.622879497, 5.691542918",
    "200, 6, 1000, 4.982517635, 5.042973633"
  })
  void ballFeet(double span, double foot, double work, double convex, double concave) {
    assertEquals(convex, Chord.depthMm(1 / work, span, foot), 5e-10);
    assertEquals(-concave, Chord.depthMm(-1 / work, span, foot), 5e-10);
    assertEquals(work, radius(convex, span, foot), 1e-6);
    assertEquals(-work, radius(-concave, span, foot), 1e-6);
  }

  /** The two-sided example a = 60, h = 20 gives 100: with feet of 5, convex 95, concave 105. */
  @Test
  void theFootGoesTheRightWayOnBothFaces() {
    assertEquals(95, radius(20, 120, 5), 1e-12);
    assertEquals(-105, radius(-20, 120, 5), 1e-12);
  }

  /** Bridges of the trade, own computation in double. */
  @ParameterizedTest
  @CsvSource({
    "100, 150, 8.578643763", "100, 2000, 0.625097687", "200, 500, 10.102051443",
    "200, 2000, 2.501564456", "200, 10000, 0.500012501", "300, 1000, 11.314003336",
    "300, 10000, 1.125063288"
  })
  void depthsOfCommonBridges(double span, double radius, double depth) {
    assertEquals(depth, Chord.depthMm(1 / radius, span, 0), 5e-10);
  }

  /** School lab sheet read on scribd.com/document/620694390: legs 4.5 cm, h 0.285 cm: 11.984 cm. */
  @Test
  void threeLeggedSpherometer() {
    double span = 2 * 4.5 / Math.sqrt(3);
    assertEquals(11.984, radius(0.285, span, 0), 1e-3);
  }

  /**
   * Railway mid-ordinates: Vose, Handbook of Railroad Construction (radius of a degree of curve by
   * chord, feet, read). A degree of curve is the angle that a chord of 100 ft spans, four times the
   * angle whose tangent is mid-ordinate over half the chord. On a 62-ft chord the mid-ordinate in
   * inch (recomputed) is the degree of curve, nearly: the reason why that chord is used.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 5730, 1.00635",
    "2, 2865, 2.01267",
    "4, 1433, 4.02508",
    "8, 716.8, 8.04808",
    "10, 573.7, 10.05815"
  })
  void railwayCurves(double degrees, double publishedFeet, double midOrdinateInch) {
    double feet = 50 / Math.sin(Math.toRadians(degrees / 2));
    assertEquals(midOrdinateInch, 12 * Chord.depthMm(1 / feet, 62, 0), 5e-6);
    double angle = 4 * Math.atan(Chord.depthMm(1 / publishedFeet, 100, 0) / 50);
    assertEquals(degrees, Math.toDegrees(angle), 3e-4 * degrees);
    assertEquals(degrees, 12 * Chord.depthMm(1 / publishedFeet, 62, 0), 0.0065 * degrees);
  }

  /** Versine 125 C²/R, railway practice, from memory. */
  @Test
  void metricVersine() {
    assertEquals(50.0, Chord.depthMm(1 / 1e6, 20_000, 0), 0.002);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, 100.001, -100.001})
  void depthsThatNoBendGivesAreRefused(double depth) {
    assertThrows(BadInput.class, () -> Chord.curvaturePerMm(depth, 200, 0));
  }

  @Test
  void everyImpossibleCombinationSaysWhy() {
    refused("is not above zero", () -> Chord.curvaturePerMm(1, -200, 0));
    refused("is not a number", () -> Chord.depthMm(Double.NaN, 200, 0));
    refused("meets the other foot", () -> Chord.curvaturePerMm(1, 200, 100));
    refused("too tight for both feet to stand on", () -> Chord.depthMm(1 / 94.9, 200, 5));
    refused("too tight for the feet to go into", () -> Chord.depthMm(-1 / 104.9, 200, 5));
    refused("too tight for the feet to go into", () -> Chord.depthMm(-1 / 4.0, 200, 5));
    assertEquals(100, Chord.depthMm(1 / 95.0, 200, 5), 1e-4);
    assertEquals(-100, Chord.depthMm(-1 / 105.0, 200, 5), 1e-4);
  }

  private static void refused(String why, Runnable call) {
    String message = assertThrows(BadInput.class, call::run).toString();
    assertTrue(message.contains(why), message);
  }
}
