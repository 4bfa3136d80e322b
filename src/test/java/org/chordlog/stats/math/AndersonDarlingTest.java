package org.chordlog.stats.math;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.stats.Data;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A² and p of public data (StRD Lew, Mavro; ZARR13 of the NIST/SEMATECH e-Handbook), recomputed
 * independently with 50 digits and with a general-purpose statistics library; no publication gives
 * them.
 */
final class AndersonDarlingTest {
  @ParameterizedTest
  @CsvSource({
    "strd-lew.csv, 6.000647, 6.023487, 8.325e-15",
    "handbook-zarr13.csv, 0.126479, 0.126973, 0.985",
    "strd-mavro.csv, 1.668465, 1.694994, 0.0002413"
  })
  void statisticAndP(String file, double statistic, double adjusted, double p) {
    AndersonDarling test = AndersonDarling.of(Data.column(Data.rows(file), 0));
    assertEquals(statistic, test.statistic(), 1e-6);
    assertEquals(adjusted, test.adjusted(), 1e-6);
    assertEquals(p, test.pValue(), p * 1e-3);
  }
}
