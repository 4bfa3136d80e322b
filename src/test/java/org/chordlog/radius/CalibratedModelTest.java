package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A calibration whose span and zero offset go strongly together; invented. */
final class CalibratedModelTest {
  private static final double SPAN = 199.4;
  private static final double OFFSET = 0.03;
  private static final double FOOT = 4.8;

  private static RadiusModel model(Face face, double together, double degrees) {
    double ss = 0.04 * 0.04;
    double zz = 0.004 * 0.004;
    double sz = together * 0.04 * 0.004;
    Calibration calibration =
        new Calibration(
            1,
            "s",
            1,
            new Calibration.Fitted(
                SPAN,
                OFFSET,
                FOOT,
                List.of(List.of(ss, sz, 0.0), List.of(sz, zz, 0.0), List.of(0.0, 0.0, 0.0)),
                degrees),
            new Recorded(0, "me"),
            1,
            "");
    Bridge nominal = new Bridge(1, "B", new Bridge.Span(200, 9), new Bridge.Feet(5, 0.01), 0);
    Indicator indicator = new Indicator(0.001, 0.001, 25);
    Section flat = new Section.Flat(10, 50);
    return RadiusModel.of(new SetUp(nominal, indicator, null, calibration, flat, face, face));
  }

  /** Formula against draws: u within 2 %, ends within 0.1 u; t with 30 degrees in the last rows. */
  @ParameterizedTest
  @CsvSource({
    "OUTER, 0, 1e6",
    "OUTER, 0.95, 1e6",
    "OUTER, -0.95, 1e6",
    "INNER, 0.95, 1e6",
    "INNER, -0.95, 30",
    "OUTER, 0.95, 30"
  })
  void theCovarianceCounts(Face face, double together, double degrees) {
    RadiusModel model = model(face, together, degrees);
    long depth = Length.nm(model.depthForMm(800));
    RadiusEstimate e = model.estimate(depth, 0, 1);
    Double radius = e.radiusMm();
    assertEquals(800, radius == null ? 0 : radius, 1e-3);
    MonteCarloResult drawn = MonteCarlo.run(model, depth, 0, 1, 200_000, 11);
    double inflation = degrees < 1e6 ? Math.sqrt(degrees / (degrees - 2)) : 1;
    double ratio = drawn.standardUncertaintyPerMm() / e.standardUncertaintyPerMm();
    assertTrue(ratio > 0.98 && ratio < 1.02 * inflation, () -> "u ratio " + ratio);
    assertTrue(drawn.endsApart(e) < 0.1, () -> "ends apart " + drawn.endsApart(e));
  }

  /**
   * A span found too long with a zero found too high cancel on the outer face and add on the inner.
   */
  @ParameterizedTest
  @CsvSource({"OUTER, 0.5", "INNER, -0.5"})
  void theSignOfTheCorrelationDependsOnTheFace(Face face, double together) {
    double with = uOf(model(face, together, 1e6));
    double without = uOf(model(face, -together, 1e6));
    assertTrue(with != without && with > without, with + " against " + without);
  }

  private static double uOf(RadiusModel model) {
    long depth = Length.nm(model.depthForMm(800));
    return model.estimate(depth, 0, 1).standardUncertaintyPerMm();
  }
}
