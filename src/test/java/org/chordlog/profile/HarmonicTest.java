package org.chordlog.profile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class HarmonicTest {
  private static final int COUNT = 120;

  private static double[] places() {
    double[] places = new double[COUNT];
    for (int i = 0; i < COUNT; i++) {
      places[i] = 40.0 * i;
    }
    return places;
  }

  /**
   * A wave of 1.2 at 180π mm with phase 0.7 in noise: 1.5 times the sum of twelve uniforms less
   * six, x ← 48271 x mod 2147483647 (Park and Miller 1988, multiplier of 1993) from 12345.
   */
  static double[] values() {
    long x = 12_345;
    double[] values = new double[COUNT];
    for (int i = 0; i < COUNT; i++) {
      double sum = -6;
      for (int k = 0; k < 12; k++) {
        x = 48_271 * x % 2_147_483_647L;
        sum += x / 2_147_483_647.0;
      }
      values[i] = 1.2 * Math.cos(2 * Math.PI * 40 * i / (180 * Math.PI) - 0.7) + 1.5 * sum;
    }
    return values;
  }

  @Test
  void theSeries() {
    double[] values = values();
    double[] first = {1.344390739, -1.517909144, 4.159172318, 0.120720081, 1.208352851};
    for (int i = 0; i < first.length; i++) {
      assertEquals(first[i], values[i], 1e-9);
    }
  }

  /** No published source: least squares on the same series with another program. */
  @ParameterizedTest
  @CsvSource({
    "565.486677646, 0.220448713, 1.09131296, 0.634045303, 4.70884663e-07",
    "471.238898038, 0.0136899677, 0.270158188, -3.12377443, 0.446464426",
    "282.743338823, 0.00105556967, 0.075521766, 2.64367691, 0.94008645"
  })
  void powerAmplitudeAndPhase(double wave, double z, double amplitude, double phase, double p) {
    Harmonic series = new Harmonic(places(), values(), false);
    Harmonic.Line line = series.at(1 / wave);
    double share = line.drop() / series.sumOfSquares();
    assertEquals(z, share, 1e-9);
    assertEquals(amplitude, line.amplitude(), 1e-8);
    assertEquals(phase, line.phase(), 1e-7);
    assertEquals(p, Math.pow(1 - share, (COUNT - 3) / 2.0), 1e-6 * p);
  }

  @Test
  void theStrongestPeriodAndWhatIsLeft() {
    Harmonic series = new Harmonic(places(), values(), false);
    Harmonic.Line best = series.at(1 / 561.719831);
    assertEquals(0.222934019, best.drop() / series.sumOfSquares(), 1e-9);
    assertEquals(1.098259746, best.amplitude(), 1e-8);
    double rest = Math.sqrt((series.sumOfSquares() - best.drop()) / (COUNT - 4));
    assertEquals(1.472518912, rest, 1e-8);
    assertEquals(
        1.98815e-05, Math.sqrt(6.0 / COUNT) * rest / (Math.PI * 4800 * best.amplitude()), 1e-9);
  }

  @Test
  void aWaveAndATrendAreTakenOutWhole() {
    double[] places = places();
    double[] values = new double[COUNT];
    for (int i = 0; i < COUNT; i++) {
      values[i] = 5 + 0.001 * places[i] + 0.4 * Math.cos(2 * Math.PI * places[i] / 700 - 1.1);
    }
    Harmonic series = new Harmonic(places, values, true);
    Harmonic.Line line = series.at(1 / 700.0);
    assertEquals(0.4, line.amplitude(), 1e-9);
    assertEquals(1.1, line.phase(), 1e-9);
    series.takeOut(1 / 700.0);
    assertEquals(0, series.sumOfSquares(), 1e-18 * COUNT);
    assertEquals(0, series.at(1 / 700.0).drop(), 1e-12);
  }
}
