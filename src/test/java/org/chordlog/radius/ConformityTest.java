package org.chordlog.radius;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ConformityTest {
  private static final NormalDistribution STANDARD = new NormalDistribution();

  /** An estimate with that U, so large a radius that curvature and radius are alike. */
  private static RadiusEstimate estimate(double radius, double expanded) {
    double u = expanded / 2 / (radius * radius);
    return new RadiusEstimate(radius, radius - expanded, radius + expanded, 1 / radius, u, 2, 1e6);
  }

  private static Specification limits(@Nullable Double lower, @Nullable Double upper) {
    return new Specification(Face.OUTER, 1000, lower, upper);
  }

  /**
   * ILAC-G8:2019 as quoted (specification 10 ± 1, U 0.2): acceptance ±0.834 after ISO 14253-1:2017,
   * ±0.8 with w = U, ±0.7 with 1.5 U, ±0.4 with 3 U; here a thousand times larger, above 10 000.
   */
  @ParameterizedTest
  @CsvSource({"0.8224268, 835.5", "1, 800", "1.5, 700", "3, 400"})
  void acceptanceLimits(double guard, double acceptance) {
    Conformity rule = new Conformity(guard);
    Specification s = limits(10_000_000.0 - 1000, 10_000_000.0 + 1000);
    for (int side = -1; side <= 1; side += 2) {
      double edge = 10_000_000 + side * acceptance;
      assertEquals(Decision.CONFORMS, rule.decide(estimate(edge - side * 0.5, 200), s));
      assertEquals(Decision.UNDECIDED, rule.decide(estimate(edge + side * 0.5, 200), s));
    }
  }

  /** The same table: probability of false acceptance at the acceptance limit is Φ(-2r). */
  @ParameterizedTest
  @CsvSource({"1, 0.025", "0.83, 0.05", "0, 0.5"})
  void falseAcceptanceIsBelowThePublishedBound(double factor, double bound) {
    assertEquals(bound, falseAcceptance(new Conformity(factor)), bound * 0.1);
  }

  @Test
  void theRuleOfTheStandardAcceptsFalselyInOneOfTwenty() {
    assertEquals(0.05, falseAcceptance(Conformity.ISO_14253_1), 1e-5);
  }

  /** Probability that the true value is beyond the limit where the rule just accepts. */
  private static double falseAcceptance(Conformity rule) {
    return STANDARD.cumulativeProbability(-guardBandInStandardUncertainties(rule));
  }

  /** Found from the decisions alone: U is 200, so u is 100, and the upper limit moves. */
  private static double guardBandInStandardUncertainties(Conformity rule) {
    RadiusEstimate e = estimate(10_000_000, 200);
    double low = -1;
    double high = 1_000;
    while (high - low > 1e-6) {
      double middle = (low + high) / 2;
      boolean conforms = rule.decide(e, limits(null, 10_000_000 + middle)) == Decision.CONFORMS;
      low = conforms ? low : middle;
      high = conforms ? middle : high;
    }
    return high / 100;
  }

  /**
   * Micrometer example read on talalspecialbolt.com: ±3 µm, U 1 µm: 1.7 conforms, 2.5 is in the
   * grey zone (guard band U).
   */
  @Test
  void micrometer() {
    Specification s = limits(9_999_997.0, 10_000_003.0);
    Conformity whole = Conformity.WHOLE_UNCERTAINTY;
    assertEquals(Decision.CONFORMS, whole.decide(estimate(10_000_001.7, 1), s));
    assertEquals(Decision.UNDECIDED, whole.decide(estimate(10_000_002.5, 1), s));
    assertEquals(Decision.DOES_NOT_CONFORM, whole.decide(estimate(10_000_004.5, 1), s));
  }

  /**
   * JCGM 106:2012, 7.4 example 1 (memory): upper limit −5.40 V, measured −5.47 V, u 0.05 V, so the
   * probability of conformity is 0.92; here with 1 mm a volt around 10 000 m. The guard factor at
   * which the verdict turns is that probability's, Φ(2·guard factor).
   */
  @Test
  void breakdownVoltage() {
    RadiusEstimate e = estimate(10_000_000 - 5.47, 2 * 0.05);
    Specification s = limits(null, 10_000_000 - 5.40);
    assertEquals(Decision.CONFORMS, new Conformity(1.2815516 / 2).decide(e, s));
    assertEquals(Decision.UNDECIDED, Conformity.ISO_14253_1.decide(e, s));
    double low = 0;
    double high = 2;
    while (high - low > 1e-6) {
      double middle = (low + high) / 2;
      boolean conforms = new Conformity(middle).decide(e, s) == Decision.CONFORMS;
      low = conforms ? middle : low;
      high = conforms ? high : middle;
    }
    assertEquals(0.92, STANDARD.cumulativeProbability(2 * low), 0.005);
  }

  /** The same table: one-sided z of 0.80, 0.90, 0.95, 0.99 and 0.999 (memory). */
  @ParameterizedTest
  @CsvSource({"0.84, 0.8", "1.28, 0.9", "1.64, 0.95", "2.33, 0.99", "3.09, 0.999"})
  void theGuardBandGivesTheProbability(double z, double probability) {
    assertEquals(1 - probability, falseAcceptance(new Conformity(z / 2)), 0.002);
  }

  @Test
  void oneLimitOrNone() {
    Conformity rule = Conformity.ISO_14253_1;
    assertEquals(Decision.NO_LIMITS, rule.decide(estimate(1000, 1), limits(null, null)));
    assertEquals(Decision.CONFORMS, rule.decide(estimate(5000, 1), limits(990.0, null)));
    assertEquals(Decision.DOES_NOT_CONFORM, rule.decide(estimate(5000, 1), limits(null, 990.0)));
  }

  @Test
  void limitsOnAnotherFaceAreConverted() {
    RadiusModel model = RadiusModel.of(RadiusModelTest.setUp(0, Face.OUTER, Face.CENTRELINE));
    RadiusEstimate e = estimate(1000, 4);
    Specification outer = new Specification(Face.OUTER, 1025, 1020.0, 1030.0);
    Specification inner = new Specification(Face.INNER, 975, 977.0, 990.0);
    assertEquals(Decision.CONFORMS, model.decide(e, outer));
    assertEquals(Decision.UNDECIDED, model.decide(e, inner));
  }

  @Test
  void aFlatNeverConformsToAnUpperLimitItCanBeToldFrom() {
    RadiusModel model = RadiusModel.of(RadiusModelTest.setUp(0, Face.OUTER, Face.OUTER));
    RadiusEstimate flat = model.estimate(0, 0, 1);
    assertEquals(Decision.DOES_NOT_CONFORM, model.decide(flat, limits(null, 2000.0)));
    assertEquals(Decision.CONFORMS, model.decide(flat, limits(2000.0, null)));
    assertEquals(Decision.UNDECIDED, model.decide(flat, limits(1e7, null)));
  }

  /**
   * JCGM 106:2012, 8.3.3: in the middle of a tolerance of 2 × 1.645 u, 5 % lie beyond each limit,
   * 10 % in all; from 2 × 1.96 u on it is 5 % in all.
   */
  @ParameterizedTest
  @CsvSource({"1.65, UNDECIDED", "1.955, UNDECIDED", "1.965, CONFORMS"})
  void theChancesBeyondBothLimitsAddUp(double half, Decision expected) {
    double u = 100;
    Specification both = limits(10_000_000 - half * u, 10_000_000 + half * u);
    RadiusEstimate middle = estimate(10_000_000, 2 * u);
    assertEquals(expected, Conformity.ISO_14253_1.decide(middle, both));
    Specification one = limits(10_000_000 - half * u, null);
    assertEquals(Decision.CONFORMS, Conformity.ISO_14253_1.decide(middle, one));
  }
}
