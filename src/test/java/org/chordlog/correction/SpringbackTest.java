package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.correction.Told.Lot.Offset;
import org.chordlog.simulator.DemoBend;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Plastic beam theory; digits recomputed in another language, the hardening ones checked there
 * against integration of the bilinear law over the section.
 */
final class SpringbackTest {
  private static final double YOUNG = 210_000;

  private static void near(double expected, double found) {
    assertEquals(expected, found, 5e-9 * Math.abs(expected));
  }

  @ParameterizedTest
  @CsvSource({
    "RECTANGLE, 20, 500, 355, 0, 0.00187328977, 0.999924517, -1.4973209",
    "RECTANGLE, 20, 500, 355, 0.02, 0.00183582397, 0.979926027, -1.46737448",
    "RECTANGLE, 20, 2000, 355, 0.02, 0.000366933568, 0.975265728, -1.42799167",
    "SOLID_ROUND, 20, 500, 355, 0, 0.00185663603, 0.999871925, -1.69310657",
    "SOLID_ROUND, 20, 500, 355, 0.02, 0.00181950331, 0.979874487, -1.65924444",
    "SOLID_ROUND, 20, 2000, 355, 0.02, 0.000351378411, 0.972032109, -1.59289606",
    "THIN_TUBE, 28.55, 1651.8268647380767, 235, 0, 0.000555519234, 0.999884666, -1.27056808",
    "THIN_TUBE, 28.55, 1651.8268647380767, 235, 0.02, 0.00054440885, 0.979886973, -1.24515672",
    "THIN_TUBE, 28.55, 700, 235, 0, 0.00137867171, 0.999991232, -1.27276021"
  })
  void unloading(
      SectionShape shape,
      double fibre,
      double radius,
      double yield,
      double hardening,
      double unloaded,
      double gain,
      double ofYield) {
    Springback back =
        new Springback(shape, SectionShape.yieldPerMm(yield, YOUNG, fibre), hardening);
    near(unloaded, back.unloadedPerMm(1 / radius));
    near(gain, back.gain(1 / radius));
    near(ofYield, back.ofYield(1 / radius));
    near(1 / radius, back.loadedPerMm(unloaded));
  }

  /** R/R' = 4x³ − 3x + 1, x = RY/(Et): a published form of the rectangle (sheet bending). */
  @ParameterizedTest
  @CsvSource({"100, 3, 355, 120.240278", "500, 5, 235, 746.38997", "1000, 10, 355, 1952.43591"})
  void theCubicOfSheetBending(double radius, double height, double yield, double expected) {
    double perMm = SectionShape.yieldPerMm(yield, YOUNG, height / 2);
    double unloaded =
        1 / new Springback(SectionShape.RECTANGLE, perMm, 0).unloadedPerMm(1 / radius);
    near(expected, unloaded);
    double x = radius * yield / (YOUNG * height);
    near(radius / (4 * x * x * x - 3 * x + 1), unloaded);
  }

  /** The same tube as the simulator's, at the demo's setting, and what lots change there. */
  @ParameterizedTest
  @CsvSource({
    "225, 0.000557638624, 1793.27667",
    "235, 0.000555519234, 1800.11769",
    "246, 0.000553188344, 1807.70335",
    "255, 0.000551281609, 1813.95751"
  })
  void aLotIsAnOffset(double yield, double unloaded, double radiusByOffset) {
    near(unloaded, DemoBend.unloadedPerMm(25.58, yield));
    Springback tube = tube(235);
    double reference = DemoBend.unloadedPerMm(25.58, 235);
    Offset offset = YieldOffset.between(tube, 1 / reference, 235, yield, 3);
    near(radiusByOffset, 1 / (reference + offset.perMm()));
  }

  private static Springback tube(double yield) {
    double perMm = SectionShape.yieldPerMm(yield, YOUNG, 28.55);
    return new Springback(SectionShape.THIN_TUBE, perMm, 0);
  }

  /** −0.381 permil per MPa at the demo, both yield strengths known to 3 MPa. */
  @Test
  void uncertaintyOfACertificate() {
    Offset offset = YieldOffset.between(tube(240), 1800, 240, 248, 3);
    assertEquals(-8 * 0.381425, 1000 * 1800 * offset.perMm(), 1e-3);
    assertEquals(
        0.381425 * 3 * Math.sqrt(2), 1000 * 1800 * offset.standardUncertaintyPerMm(), 1e-3);
  }

  /** Gain of pyramid rollers against the chord's 2/a², on the simulator's rollers. */
  @ParameterizedTest
  @CsvSource({
    "5, 15697.5512, 2.23840607e-05, 1.00728273, -5515.72609",
    "10, 5605.41922, 2.33278653e-05, 1.04975394, -732.978431",
    "20, 2395.3526, 2.44535751e-05, 1.10041088, -140.307622",
    "25.58, 1800.11769, 2.50186148e-05, 1.12583767, -81.0709123",
    "40, 1080.07691, 2.63008462e-05, 1.18353808, -30.6816762",
    "60, 682.316491, 2.75605331e-05, 1.24022399, -12.8309659",
    "80, 494.246875, 2.80718152e-05, 1.26323168, -6.85738229"
  })
  void gainOfTheRollers(
      double setting, double radius, double gain, double overChord, double mmPerMm) {
    double perMm = DemoBend.unloadedPerMm(setting, 235);
    near(radius, 1 / perMm);
    double step = 1e-4;
    double slope =
        (DemoBend.unloadedPerMm(setting + step, 235) - DemoBend.unloadedPerMm(setting - step, 235))
            / (2 * step);
    assertEquals(gain, slope, 1e-7 * gain);
    double half = DemoBend.HALF_DISTANCE_MM;
    assertEquals(overChord, slope / (2 / (half * half)), 1e-6);
    assertEquals(mmPerMm, -slope * radius * radius, 1e-6 * -mmPerMm);
    GainPrior prior = GainPrior.ofPyramidRollers(half, 1);
    assertEquals(slope, prior.perMmPerUnit(), prior.standardUncertainty());
    GainPrior known = GainPrior.ofRadiusChange(mmPerMm, radius, 0.1);
    assertEquals(slope, known.perMmPerUnit(), 1e-6 * slope);
  }

  /** The gain by the chain of rollers and springback, in closed form. */
  @Test
  void gainIsChordTimesSpringback() {
    double u = 25.58;
    double a = DemoBend.HALF_DISTANCE_MM;
    double loaded = 1 / DemoBend.loadedRadiusMm(u);
    double ofRollers = (a * a - u * u) / (2 * u * u) * loaded * loaded;
    near(2.50215007e-05, ofRollers);
    near(2.50186148e-05, ofRollers * tube(235).gain(loaded));
  }
}
