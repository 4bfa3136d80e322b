package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class WidestTest {
  private static final Indicator USUAL = new Indicator(0.001, 0.02, 25);

  private static Bridge bridge(double spanMm, double skew) {
    return new Bridge(0, "b", new Bridge.Span(spanMm, 0.02), new Bridge.Feet(5, 0.01), skew);
  }

  /** A reading at the bound is a radius, one beyond it a flat. */
  @ParameterizedTest
  @CsvSource({"50", "200", "1000"})
  void readingsWiderThanThatAreFlat(double spanMm) {
    Bridge of = bridge(spanMm, 0);
    double widest = Widest.radiusMm(of, USUAL);
    assertEquals(false, flat(of, widest));
    assertEquals(true, flat(of, 1.2 * widest));
  }

  private static boolean flat(Bridge of, double radiusMm) {
    Section any = new Section.Flat(1, 1);
    SetUp setUp = new SetUp(of, USUAL, null, null, any, Face.OUTER, Face.OUTER);
    double depthMm = Chord.depthMm(1 / radiusMm, of.spanMm(), of.footRadiusMm());
    return RadiusModel.of(setUp).estimate(Length.nm(depthMm), 0, 1).flat();
  }

  @Test
  void aFinerIndicatorReachesWider() {
    double fine = Widest.radiusMm(bridge(200, 0), new Indicator(0.0001, 0.001, 10));
    assertTrue(fine > 10 * Widest.radiusMm(bridge(200, 0), USUAL), "" + fine);
    assertEquals(Widest.radiusMm(bridge(200, 0), USUAL), Widest.radiusMm(bridge(200, 3), USUAL));
  }
}
