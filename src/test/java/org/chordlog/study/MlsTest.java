package org.chordlog.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.statistics.distribution.FDistribution;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Interval;
import org.junit.jupiter.api.Test;

/** Intervals of combinations of mean squares. */
final class MlsTest {
  private static final Mls MLS = new Mls(0.95);

  /** χ² quantiles of 10 degrees of freedom: 3.24697 and 20.48318 (any table). */
  @Test
  void aSingleMeanSquareHasTheChiSquareInterval() {
    Interval interval = MLS.of(Combination.of(new MeanSquare("a", 2, 10)));
    assertEquals(20 / 20.48318, interval.lower(), 1e-6);
    assertEquals(20 / 3.24697, interval.upper(), 1e-5);
  }

  /**
   * Where both ends of a difference would be 0 the F test is at its level: the lower end is 0
   * exactly where the ratio is the upper 2.5 % point of F (Burdick and Larsen 1997, 3.3).
   */
  @Property(tries = 60)
  void theLowerEndIsZeroWhereTheRatioIsNotSignificant(
      @ForAll @IntRange(min = 1, max = 40) int above,
      @ForAll @IntRange(min = 2, max = 90) int below) {
    double f = FDistribution.of(above, below).inverseSurvivalProbability(0.025);
    double just = lower(1.001 * f, above, below);
    assertTrue(just > 0 && just < 0.01 * f, "just significant: " + just);
    assertEquals(0, lower(0.999 * f, above, below), 1e-9, "just not");
  }

  private static double lower(double ratio, int above, int below) {
    MeanSquare a = new MeanSquare("a", ratio, above);
    MeanSquare b = new MeanSquare("b", 1, below);
    return MLS.of(Combination.difference(a, b, 3)).lower();
  }

  @Property(tries = 100)
  void theValueIsInsideAndTheUnitDoesNotMatter(
      @ForAll @DoubleRange(min = 0.01, max = 50) double first,
      @ForAll @DoubleRange(min = 0.01, max = 50) double second,
      @ForAll @IntRange(min = 1, max = 60) int degrees) {
    Interval one = difference(first, second, degrees, 1);
    assertTrue(one.lower() <= Math.max(0, one.value()) && one.value() <= one.upper());
    Interval scaled = difference(first, second, degrees, 1e-9);
    assertEquals(one.upper() * 1e-9, scaled.upper(), 1e-9 * 1e-9 * one.upper());
  }

  private static Interval difference(double first, double second, int degrees, double scale) {
    return MLS.of(
        Combination.NONE
            .plus(0.5, new MeanSquare("a", scale * first, degrees))
            .plus(-0.5, new MeanSquare("b", scale * second, 9))
            .plus(1, new MeanSquare("c", scale, 30)));
  }

  /** Exact variances move the interval and do not widen it. */
  @Test
  void statedVariancesHaveNoScatter() {
    MeanSquare seen = new MeanSquare("a", 2, 10);
    Interval alone = MLS.of(Combination.of(seen));
    Interval more = MLS.of(Combination.of(seen).plus(1, MeanSquare.stated("b", 5)));
    assertEquals(alone.lower() + 5, more.lower(), 1e-12);
    assertEquals(alone.upper() + 5, more.upper(), 1e-12);
  }

  /** A generalised interval of one mean square is the χ² interval, but for its draws. */
  @Test
  void drawsGiveTheSameForASingleMeanSquare() {
    MeanSquare square = new MeanSquare("a", 2, 10);
    Interval exact = MLS.of(Combination.of(square));
    Interval drawn =
        new GeneralisedIntervals(List.of(square), 0.95, 5, 100_000).of(2, all -> all[0]);
    assertEquals(exact.lower(), drawn.lower(), 0.01);
    assertEquals(exact.upper(), drawn.upper(), 0.15);
  }

  @Test
  void nonsenseIsRefused() {
    assertThrows(BadInput.class, () -> new MeanSquare("a", -1, 3));
    assertThrows(BadInput.class, () -> new MeanSquare("a", 1, 0));
  }
}
