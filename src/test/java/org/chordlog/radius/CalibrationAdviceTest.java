package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Length;
import org.chordlog.measure.Master;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Why a calibration raises the uncertainty, and what would lower it; bridges are invented. */
final class CalibrationAdviceTest {
  private static final Indicator FINE = new Indicator(0.001, 0.003, 25);

  private static Bridge bridge(double spanUncertainty) {
    return new Bridge(1, "B", new Bridge.Span(200, spanUncertainty), new Bridge.Feet(0, 0), 0);
  }

  private static MasterReading reading(double signedRadius, double expanded) {
    Face face = signedRadius > 0 ? Face.OUTER : Face.INNER;
    Master master = new Master(1, "M" + signedRadius, face, Math.abs(signedRadius), expanded);
    double depth = Chord.depthMm(1 / signedRadius, 200.05, 0);
    return new MasterReading(master, Length.nm(depth), 500, 10);
  }

  private static List<MasterReading> readings(double expanded, double... radii) {
    return DoubleStream.of(radii).mapToObj(r -> reading(r, expanded)).toList();
  }

  private static CalibrationAdvice advice(double spanUncertainty, List<MasterReading> readings) {
    return CalibrationAdvice.of(bridge(spanUncertainty), FINE, null, readings, Face.OUTER, 1000);
  }

  /** The figures are those of readings with the stated bridge and with the calibration. */
  @Test
  void figuresAreThoseOfReadings() {
    List<MasterReading> masters = readings(0.2, 800, 1200);
    CalibrationAdvice advice = advice(0.05, masters);
    CalibrationFit fit = CalibrationFit.of(bridge(0.05), FINE, null, masters);
    Calibration calibration = fit.record("s", 1, 1, 2, 3, "me");
    assertEquals(uncertainty(null), advice.statedMm(), 1e-6 * advice.statedMm());
    assertEquals(uncertainty(calibration), advice.fittedMm(), 1e-6 * advice.fittedMm());
  }

  private static double uncertainty(@Nullable Calibration calibration) {
    Section flat = new Section.Flat(10, 40);
    SetUp setUp = new SetUp(bridge(0.05), FINE, null, calibration, flat, Face.OUTER, Face.OUTER);
    RadiusModel model = RadiusModel.of(setUp);
    RadiusEstimate estimate = model.estimate(Length.nm(model.depthForMm(1000)), 0, 1);
    return 1e6 * estimate.standardUncertaintyPerMm();
  }

  @Test
  void twoMastersFreeTheZeroAndThatIsSaid() {
    CalibrationAdvice advice = advice(0.02, readings(0.05, 800, 900));
    assertTrue(advice.fittedMm() > 1.2 * advice.statedMm(), advice.toString());
    Double held = advice.zeroHeldMm();
    assertNotNull(held);
    assertTrue(held < advice.fittedMm());
    assertTrue(
        advice.sentences().get(0).toString().contains("raises"),
        advice.sentences().get(0).toString());
    assertTrue(
        advice.sentences().get(1).toString().contains("free the zero"),
        advice.sentences().get(1).toString());
    assertTrue(
        advice.sentences().get(1).toString().contains("2 masters"),
        advice.sentences().get(1).toString());
  }

  /** What is promised for the master offered is what it then gives. */
  @Test
  void theOfferIsKept() {
    List<MasterReading> masters = readings(0.05, 800, 900);
    CalibrationAdvice.Addition best = advice(0.02, masters).best();
    assertNotNull(best);
    double signed = (best.face() == Face.OUTER ? 1 : -1) * best.masterRadiusMm();
    List<MasterReading> more = new ArrayList<>(masters);
    double relative = 0.05 / 900;
    more.add(reading(signed, relative * best.masterRadiusMm()));
    CalibrationAdvice after = advice(0.02, more);
    assertEquals(best.fittedMm(), after.fittedMm(), 2e-3 * best.fittedMm());
    assertTrue(after.fittedMm() < 0.95 * advice(0.02, masters).fittedMm());
  }

  @Test
  void aPoorMasterIsNamedAsTheReason() {
    CalibrationAdvice advice = advice(0.01, readings(2, 1000));
    assertNull(advice.zeroHeldMm());
    assertTrue(advice.sentences().get(1).toString().contains("The masters tell the span to"));
  }

  @Test
  void goodMastersLowerIt() {
    CalibrationAdvice advice = advice(1, readings(0.02, 400, 1000, 3000));
    assertTrue(advice.fittedMm() < advice.statedMm());
    assertTrue(
        advice.sentences().get(0).toString().contains("lowers"),
        advice.sentences().get(0).toString());
  }

  /** A travel of 5 mm reaches no master tighter than 1003 mm on this span. */
  @Test
  void onlyWhatTheIndicatorReachesIsOffered() {
    Indicator shortTravel = new Indicator(0.001, 0.003, 5);
    CalibrationAdvice.Addition best =
        CalibrationAdvice.of(
                bridge(0.02), shortTravel, null, readings(0.05, 1100, 1200), Face.OUTER, 1500)
            .best();
    assertNotNull(best);
    assertTrue(best.masterRadiusMm() >= 1003, best.toString());
  }
}
