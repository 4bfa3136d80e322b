package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** GUM (JCGM 100:2008) Table G.2, from memory, recomputed to four decimals. */
final class StudentTTest {
  @ParameterizedTest
  @CsvSource(
      textBlock =
          """
          1,   1.8373, 6.3138, 12.7062, 13.9677, 63.6567, 235.8015
          2,   1.3213, 2.9200, 4.3027,  4.5265,  9.9248,  19.2067
          3,   1.1969, 2.3534, 3.1824,  3.3068,  5.8409,  9.2189
          5,   1.1105, 2.0150, 2.5706,  2.6486,  4.0321,  5.5071
          10,  1.0526, 1.8125, 2.2281,  2.2837,  3.1693,  3.9569
          16,  1.0322, 1.7459, 2.1199,  2.1689,  2.9208,  3.5441
          20,  1.0256, 1.7247, 2.0860,  2.1330,  2.8453,  3.4222
          50,  1.0101, 1.6759, 2.0086,  2.0512,  2.6778,  3.1571
          100, 1.0050, 1.6602, 1.9840,  2.0253,  2.6259,  3.0768
          1e6, 1.0000, 1.6449, 1.9600,  2.0000,  2.5758,  3.0000
          """)
  void table(
      double nu, double t68, double t90, double t95, double t9545, double t99, double t9973) {
    double[] probability = {0.6826894921, 0.90, 0.95, 0.9544997361, 0.99, 0.9973002039};
    double[] published = {t68, t90, t95, t9545, t99, t9973};
    for (int i = 0; i < published.length; i++) {
      double t = new StudentT(0.5 + probability[i] / 2).quantile(nu);
      assertEquals(published[i], t, 5.1e-5, "t " + probability[i]);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {201, 500, 5000, 200_000})
  void theExpansionAboveTheTableAgreesWithTheDistribution(int nu) {
    double p = 0.5 + 0.9544997361036416 / 2;
    double exact = new TDistribution(null, nu).inverseCumulativeProbability(p);
    assertEquals(exact, StudentT.COVERAGE.quantile(nu), 2e-8);
  }
}
