package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.measure.SetUp;
import org.junit.jupiter.api.Test;

/** Invented bridges and masters whose truth is known. */
final class CalibrationFitTest {
  private static final Indicator FINE = new Indicator(0.001, 0.003, 25);
  private static final double SPAN = 200.35;
  private static final double FOOT = 5.2;
  private static final double OFFSET = 0.012;

  private static Bridge bridge(double footUncertainty) {
    return new Bridge(1, "B", new Bridge.Span(200, 0.5), new Bridge.Feet(5, footUncertainty), 0);
  }

  private static MasterReading reading(double signedRadius, double span, double foot, double z) {
    Face face = signedRadius > 0 ? Face.OUTER : Face.INNER;
    double radius = Math.abs(signedRadius);
    Master master = new Master((long) signedRadius, "M" + signedRadius, face, radius, 0.02);
    double depth = Chord.depthMm(1 / signedRadius, span, foot) + z;
    return new MasterReading(master, Length.nm(depth), 1000, 10);
  }

  private static List<MasterReading> readings(double foot, double z, double... radii) {
    return DoubleStream.of(radii).mapToObj(r -> reading(r, SPAN, foot, z)).toList();
  }

  private static CalibrationFit fit(double footUncertainty, List<MasterReading> readings) {
    return CalibrationFit.of(bridge(footUncertainty), FINE, null, readings);
  }

  @Test
  void oneMasterGivesTheSpanAndSaysThatItCannotGiveTheZero() {
    CalibrationFit fit = fit(0, readings(5, 0, 800));
    assertEquals(SPAN, fit.spanMm(), 1e-4);
    assertEquals(0, fit.zeroOffsetMm());
    assertEquals(5, fit.footRadiusMm());
    assertEquals(0, fit.degreesOfFreedom());
    assertTrue(fit.notes().toString().contains("One master can't tell a zero offset"));
    double byHand = Math.sqrt(0.003 * 0.003 / 3 + 0.001 * 0.001 / 6 + 1e-6 / 10);
    assertEquals(byHand * SPAN / (2 * 6.27), Math.sqrt(fit.covariance().get(0).get(0)), 0.003);
  }

  @Test
  void convexAndConcaveMastersGiveAllThree() {
    CalibrationFit fit = fit(1, readings(FOOT, OFFSET, 300, -300, 1000, -1000));
    assertEquals(SPAN, fit.spanMm(), 1e-3);
    assertEquals(OFFSET, fit.zeroOffsetMm(), 1e-4);
    assertEquals(FOOT, fit.footRadiusMm(), 5e-3);
    assertTrue(fit.fits() && fit.degreesOfFreedom() == 2);
    assertTrue(fit.notes().get(2).toString().contains("mm before"));
  }

  @Test
  void mastersTooAlikeAreSaidToBe() {
    CalibrationFit fit = fit(0.002, readings(5, 0, 1000, 1005));
    assertEquals(0, fit.zeroOffsetMm());
    assertTrue(fit.notes().get(1).toString().contains("too alike"));
    assertTrue(fit.notes().get(2).toString().contains("can't tell the foot radius better"));
  }

  @Test
  void aWrongMasterIsALackOfFitAndWidensTheCovariance() {
    List<MasterReading> good = readings(5, 0, 500, -500, 1000, -1000, 2000);
    CalibrationFit well = fit(0, good);
    MasterReading wrong = good.get(2);
    Master mislabelled = new Master(9, "wrong", Face.OUTER, 1020, 0.02);
    List<MasterReading> bad =
        List.of(good.get(0), good.get(1), good.get(3), good.get(4), again(mislabelled, wrong));
    CalibrationFit ill = fit(0, bad);
    assertTrue(well.fits());
    assertFalse(ill.fits());
    assertTrue(ill.covariance().get(0).get(0) > 4 * well.covariance().get(0).get(0));
    assertEquals(3, ill.record("s", 1, 1, 2, 1, "me").degreesOfFreedom());
  }

  private static MasterReading again(Master master, MasterReading reading) {
    return new MasterReading(master, reading.depthNm(), 1000, 10);
  }

  /** Over 400 drawn calibrations the spread of the span is what its covariance says (10 %). */
  @Test
  void theCovarianceIsTheSpreadOfRepeatedCalibrations() {
    Well19937c random = new Well19937c(7);
    double[] spans = new double[400];
    double claimed = 0;
    for (int i = 0; i < spans.length; i++) {
      CalibrationFit fit = fit(0, drawn(random));
      spans[i] = fit.spanMm();
      claimed = Math.sqrt(fit.covariance().get(0).get(0));
    }
    double mean = DoubleStream.of(spans).average().orElseThrow();
    double variance = DoubleStream.of(spans).map(s -> (s - mean) * (s - mean)).sum() / 399;
    assertEquals(SPAN, mean, 4 * claimed / 20);
    assertEquals(1, Math.sqrt(variance) / claimed, 0.12);
  }

  /**
   * Zero step shared by all, own step, permissible error, scatter and master's error drawn anew.
   */
  private static List<MasterReading> drawn(Well19937c random) {
    double zeroStep = 0.0005 * (2 * random.nextDouble() - 1);
    return IntStream.of(400, -400, 900, -900)
        .mapToObj(
            r -> {
              double own =
                  0.0005 * (2 * random.nextDouble() - 1)
                      + 0.003 * (2 * random.nextDouble() - 1)
                      + 0.001 / Math.sqrt(10) * random.nextGaussian();
              double truth = r + Math.signum(r) * 0.01 * random.nextGaussian();
              MasterReading true0 = reading(r, SPAN, 5, 0);
              double depth = Chord.depthMm(1 / truth, SPAN, 5) + zeroStep + own;
              return new MasterReading(true0.master(), Length.nm(depth), 1000, 10);
            })
        .toList();
  }

  @Test
  void aCalibratedSetUpMeasuresTheMastersRight() {
    CalibrationFit fit = fit(1, readings(FOOT, OFFSET, 300, -300, 1000, -1000));
    Calibration calibration = fit.record("s", 1, 5, 10, 6, "me");
    SetUp setUp =
        new SetUp(bridge(1), FINE, null, calibration, RadiusModelTest.TUBE, Face.OUTER, Face.OUTER);
    double depth = Chord.depthMm(1 / 700.0, SPAN, FOOT) + OFFSET;
    Double radius = RadiusModel.of(setUp).estimate(Length.nm(depth), 0, 1).radiusMm();
    assertEquals(700, radius == null ? 0 : radius, 0.01);
  }

  @Test
  void whatCannotBeACalibrationIsRefused() {
    assertThrows(BadInput.class, () -> fit(0, List.of()));
    assertThrows(BadInput.class, () -> fit(0, List.of(reading(800, 260, 5, 0))));
    Master convex = new Master(1, "M", Face.OUTER, 800, 0.1);
    assertThrows(BadInput.class, () -> new MasterReading(convex, -5_000_000, 0, 1));
    CalibrationFit fit = fit(0, readings(5, 0, 800));
    assertThrows(BadInput.class, () -> fit.record("s", 1, 11, 20, 10, "me"));
  }
}
