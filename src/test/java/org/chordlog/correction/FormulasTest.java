package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalInt;
import org.chordlog.correction.MachineScale.Tighter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Closed forms behind the filter; digits recomputed in another language. */
final class FormulasTest {
  /**
   * The filter of a constant level is Grubbs's extended harmonic rule (1954; Journal of Quality
   * Technology 15, 1983, 186, pages from memory): −y τ²/(n τ² + σ²), and its variance σ²τ²/(σ² + n
   * τ²). τ = 6, σ = 2.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 9, 8.1, 3.6",
    "2, -2.1, -0.994736842, 1.89473684",
    "3, 1.4, 0.45, 1.28571429",
    "4, 0.3, 0.072972973, 0.972972973",
    "5, -0.8, -0.156521739, 0.782608696"
  })
  void setUpIsTheExtendedHarmonicRule(int n, double y, double taken, double variance) {
    Belief before = new Belief(0, 1, 36 * 4 / (4 + (n - 1) * 36.0), 0, 0);
    Belief after = before.heard(y, 4);
    assertEquals(taken, after.level(), 1e-8);
    assertEquals(variance, after.levelVariance(), 1e-8);
  }

  /** A wandering level: the steady filter is an EWMA with λ²/(1 − λ) = q/R. */
  @ParameterizedTest
  @CsvSource({
    "0.001, 0.0311267292",
    "0.003, 0.0532927915",
    "0.01, 0.095124922",
    "0.02, 0.131774469",
    "0.04, 0.180997512",
    "0.1, 0.270156212",
    "0.3, 0.417890835"
  })
  void wanderIsAnExponentialMean(double wander, double weight) {
    Belief belief = new Belief(0, 1, 10, 0, 0);
    for (int i = 0; i < 2_000; i++) {
      belief = belief.widened(wander).heard(0, 1);
    }
    assertEquals(weight, belief.levelVariance(), 1e-8);
    assertEquals(weight, belief.widened(wander).heard(1, 1).level(), 1e-8);
  }

  /** Level and its variance; pieces vary by 1.7 permil; ± 20/3. */
  @ParameterizedTest
  @CsvSource({
    "6, 2, 0.983052573, 0.381525365, 0.00257173452",
    "2, 1, 0.841344746, 0.00899400129, 0.00072450451",
    "1, 1, 0.691462461, 0.00208294993, 0.00072450451",
    "0.5, 0.25, 0.691462461, 0.000276889303, 0.000168413385",
    "3, 9, 0.691462461, 0.146337568, 0.0531890788"
  })
  void chanceAndSharesOut(double level, double variance, double chance, double out, double after) {
    assertEquals(chance, Choice.chance(new Belief(level, 1, variance, 0, 0)), 1e-9);
    double deviation = Math.sqrt(variance + 1.7 * 1.7);
    assertEquals(out, share(level, deviation), 1e-9);
    assertEquals(after, share(0, deviation), 1e-9);
  }

  /** Limits at exactly ± 20/3 permil of curvature. */
  private static double share(double level, double deviation) {
    double limit = 20 / 3000.0;
    return Outside.share(new Aim(1800, 1800 / (1 + limit), 1800 / (1 - limit)), level, deviation);
  }

  /** C = 0.5, N = 15: with a level known for certain, corrections begin at √(C/N) of T. */
  @Test
  void deadband() {
    MachineScale scale =
        new MachineScale("dial", "mm", 0, Tighter.HIGHER, 0, 0.0, new GainPrior(1, 1));
    Tuning.Stakes stakes = Tuning.usual().stakes();
    Aim aim = Aim.symmetric(1800, 12);
    for (double level : new double[] {0.18, 0.186}) {
      Belief belief = new Belief(level * aim.halfTolerance(), 40, 1e-12, 0, 1e-12);
      Adviser.Situation situation =
          new Adviser.Situation(
              new Adviser.Goal(aim, 0, stakes.pieces()),
              scale,
              RollerSetting.unknown(),
              Reach.of(scale, 0),
              belief,
              new Adviser.Variances(2, 2));
      Advice advice = new Adviser(situation, stakes).advise();
      assertEquals(
          level > 0.183, advice.action() == Advice.Action.CORRECT, advice.text().toString());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1.41421356, 1.88090404", "2, 1.22474487, 1.62891068", "3, 1.15470054, 1.53575172",
    "5, 1.09544512, 1.456942", "10, 1.04880885, 1.39491577", "20, 1.02469508, 1.36284445"
  })
  void trialPieces(int pieces, double factor, double capability) {
    assertEquals(factor, TrialPieces.spreadFactor(pieces), 1e-8);
    assertEquals(capability, TrialPieces.capabilityNeeded(pieces), 1e-8);
    assertEquals(OptionalInt.of(pieces), TrialPieces.needed(capability + 1e-7));
  }

  @ParameterizedTest
  @CsvSource({"1.45, 6", "1.67, 2", "1.33, -1", "1, -1"})
  void trialPiecesNeeded(double capability, int pieces) {
    assertEquals(pieces, TrialPieces.needed(capability).orElse(-1));
  }

  @ParameterizedTest
  @CsvSource({
    "2.6562, 1.44, 0, 0.743534577, 3.88306575",
    "2.6562, 1.44, 0.81, 0.743534577, 4.53916575",
    "1, 2, 0, 0.186567164, 4.81343284"
  })
  void startOfTheBend(double common, double along, double move, double share, double variance) {
    StartOfBend bend = new StartOfBend(common, along, 0.6, 0);
    assertEquals(share, bend.share(), 1e-8);
    assertEquals(variance, bend.restVariance(move), 1e-7);
  }

  @Test
  void firstMeasurableLength() {
    assertEquals(500, StartOfBend.firstMeasurableMm(300, 200));
  }

  /**
   * What one correction tells of the gain: u(b) = √(R/n₁ + R/n₂)/|Δ| where nothing else is known,
   * and least squares of the difference without its bias.
   */
  @Test
  void oneCorrectionTellsTheGain() {
    Belief unknown = new Belief(0, 0, 1e8, 0, 1e8);
    Belief after = unknown.heard(9, 4).moved(-0.2, 0).heard(1, 4);
    assertEquals(40, after.gain(), 1e-3);
    assertEquals(Math.sqrt(4 + 4) / 0.2, after.gainUncertainty(), 1e-3);
  }

  /** With the level's spread as known, the filter is not fooled by the reading it answered. */
  @Test
  void gainIsNotBiasedByTheReadingThatWasAnswered() {
    java.util.random.RandomGenerator random =
        java.util.random.RandomGeneratorFactory.of("L64X128MixRandom").create(4);
    double sum = 0;
    int runs = 20_000;
    for (int i = 0; i < runs; i++) {
      double level = 4 * random.nextGaussian();
      double first = level + 1.7 * random.nextGaussian();
      double second = level - first + 1.7 * random.nextGaussian();
      Belief belief = new Belief(0, 1, 16, 0, 0.09);
      sum += belief.heard(first, 2.89).moved(-first, 0).heard(second, 2.89).gain();
    }
    assertEquals(1, sum / runs, 0.01);
    assertTrue(1 + 2.89 / (2.89 + 16) > 1.15, "what least squares of differences would say");
  }
}
