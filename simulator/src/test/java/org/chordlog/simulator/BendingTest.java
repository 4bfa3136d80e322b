package org.chordlog.simulator;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class BendingTest {
  /** Thin round tube, M/My = (2/π)(θ/sin θ + cos θ): values recomputed by numerical integration. */
  @ParameterizedTest
  @CsvSource({
    "1, 1.000000000", "0.8, 1.119889952", "0.5, 1.217995562",
    "0.25, 1.259849430", "0.1, 1.271114284", "0.02, 1.273154657"
  })
  void momentOfAThinTube(double elasticShare, double momentRatio) {
    assertEquals(momentRatio, SpringBack.momentRatio(elasticShare), 1e-9);
  }

  /** The same theory: E = 210 000, Y = 235, D = 60.3, t = 3.6. */
  @ParameterizedTest
  @CsvSource({
    "300, 304.5924",
    "500, 512.8875",
    "1000, 1052.9031",
    "2000, 2223.2390",
    "5000, 6663.5499"
  })
  void springBackOfAThinTube(double loadedMm, double unloadedMm) {
    SpringBack tube = new SpringBack(210_000, (60.3 - 3.6) / 2);
    assertEquals(unloadedMm, 1 / tube.unloadedPerMm(1 / loadedMm, 235), 1e-4);
  }

  @Test
  void whatNeverYieldedGoesBackToStraight() {
    assertEquals(0, new SpringBack(210_000, 28.35).unloadedPerMm(1 / 30_000.0, 235));
  }

  /** Pythagoras: half distance 60, setting 20 make a chord circle of radius 100. */
  @Test
  void radiusFromTheRollers() {
    assertEquals(82.5, new Rollers(60, 15).loadedRadiusMm(20, 5), 1e-12);
  }
}
