package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.chordlog.correction.Told.Lot.Offset;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Section;
import org.junit.jupiter.api.Test;

/** Steps between lots, by section. */
final class CertificatesTest {
  private static final double STEEL_MPA = 210_000;

  private static Offset step(Section section, double hardening, double nextMpa) {
    return new Certificates(section, STEEL_MPA, hardening, 3).step(1800, 240, nextMpa);
  }

  /** −0.381 permil per MPa, as worked out for this tube (briefs, springback: −1.2706·ΔY/(E·r)). */
  @Test
  void aTube() {
    Offset offset = step(new Section.RoundTube(60.3, 3.2), 0, 248);
    assertEquals(-8 * 0.381425, 1800e3 * offset.perMm(), 1e-3);
    assertEquals(3 * Math.sqrt(2) * 0.381425, 1800e3 * offset.standardUncertaintyPerMm(), 1e-3);
  }

  /**
   * The slope of springback of a rectangle, from 1/R − 1/R′ = 3Y/(Et) − 4R²(Y/(Et))³ (Gardiner's
   * relation as published in textbooks of bending), by differences at the loaded radius.
   */
  @Test
  void aFlat() {
    double height = 12;
    double loaded =
        new Springback(SectionShape.RECTANGLE, kappa(240, height), 0).loadedPerMm(1 / 1800.0);
    double slope = (unloaded(loaded, 240.01, height) - unloaded(loaded, 239.99, height)) / 0.02;
    assertEquals(8 * slope, step(new Section.Flat(height, 80), 0, 248).perMm(), 1e-12);
  }

  private static double kappa(double mpa, double height) {
    return 2 * mpa / (STEEL_MPA * height);
  }

  private static double unloaded(double loadedPerMm, double mpa, double height) {
    double x = mpa / (STEEL_MPA * height);
    return loadedPerMm - 3 * x + 4 * x * x * x / (loadedPerMm * loadedPerMm);
  }

  /** Fully plastic, a solid round of radius r springs back by 16/(3π)·κ_y and its step as well. */
  @Test
  void aSolidRound() {
    double slope = -16 / (3 * Math.PI) / (STEEL_MPA * 300);
    assertEquals(slope * 8, step(new Section.SolidRound(600), 0, 248).perMm(), 1e-3 * -slope);
  }

  @Test
  void hardeningTakesItsShare() {
    Section tube = new Section.RoundTube(60.3, 3.2);
    double ratio = step(tube, 0.05, 248).perMm() / step(tube, 0, 248).perMm();
    assertEquals(0.95, ratio, 1e-3);
  }

  @Test
  void whatCantBeForetoldIsRefused() {
    Section box = new Section.Box(60, 40, 3);
    assertThrows(BadInput.class, () -> new Certificates(box, STEEL_MPA, 0, 3));
    Section round = new Section.SolidRound(30);
    assertThrows(BadInput.class, () -> new Certificates(round, 0, 0, 3));
    assertThrows(BadInput.class, () -> new Certificates(round, STEEL_MPA, 1, 3));
  }
}
