package org.chordlog.correction;

import org.chordlog.measure.Check;

/**
 * How the filter judges and what a correction is worth. The values of {@link #usual()} were chosen
 * on invented shops and are insensitive there; only {@link Stakes} are meant for a shop to choose.
 * {@code wander} is the variance that the level gains from piece to piece, in parts of the
 * scatter's.
 */
public record Tuning(Priors priors, Surprises surprises, Stakes stakes, double wander) {
  public Tuning {
    Check.notNegative("wander", wander);
  }

  /**
   * Standard deviations in half tolerances: of the level after a set-up, of the step to a new lot,
   * of pieces about the level (which counts as {@code scatterWeight} pieces).
   */
  public record Priors(double setUp, double lot, double scatter, double scatterWeight) {
    public Priors {
      Check.positive("setUp", setUp);
      Check.positive("lot", lot);
      Check.positive("scatter", scatter);
      Check.positive("scatterWeight", scatterWeight);
    }
  }

  /**
   * What may lie behind a reading beside chance: the level jumped (standard deviation in half
   * tolerances), the reading is a stray (its variance times {@code strayFactor}), or an advised
   * correction was made and not recorded. Each with its probability a reading.
   */
  public record Surprises(
      double jumpChance, double jump, double strayChance, double strayFactor, double silentChance) {
    public Surprises {
      Check.within("jumpChance", jumpChance, 0, 0.5);
      Check.positive("jump", jump);
      Check.within("strayChance", strayChance, 0, 0.4);
      Check.within("strayFactor", strayFactor, 1, 1e6);
      Check.within("silentChance", silentChance, 0, 0.5);
    }
  }

  /**
   * A piece at its limit costs 1, growing with the square of the deviation. A correction costs
   * {@code correction}; its effect counts over {@code pieces} to come; it is advised when it
   * improves the level with a probability of at least {@code leastChance}, and only if the newest
   * reading is no surprise with at least {@code leastSteady}.
   */
  public record Stakes(double correction, int pieces, double leastChance, double leastSteady) {
    public Stakes {
      Check.notNegative("correction", correction);
      Check.within("pieces", pieces, 1, 100_000);
      Check.within("leastChance", leastChance, 0.5, 0.999);
      Check.within("leastSteady", leastSteady, 0, 1);
    }

    /** Level, in half tolerances, from which a correction pays if all is known for certain. */
    public double deadband() {
      return Math.sqrt(correction / pieces);
    }
  }

  public static Tuning usual() {
    return new Tuning(
        new Priors(2, 0.7, 1 / 3.0, 4),
        new Surprises(0.005, 1, 0.01, 25, 0.1),
        new Stakes(0.5, 15, 0.8, 0.5),
        0.02);
  }

  /** The same with other stakes. */
  public Tuning with(Stakes others) {
    return new Tuning(priors, surprises, others, wander);
  }
}
