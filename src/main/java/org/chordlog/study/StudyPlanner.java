package org.chordlog.study;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decimals;
import org.chordlog.stats.math.Interval;
import org.jspecify.annotations.Nullable;

/**
 * How many parts, places, operators and repeats make an interval of GRR's share of the study
 * variation that lies on one side of the limit, with what is expected beforehand.
 */
public final class StudyPlanner {
  /** Designs that decide in at least this share of simulated studies are recommended. */
  public static final double CHANCE = 0.8;

  private static final int SIMULATED = 100;
  private static final int MOST_UNDECIDED = (int) Math.round(SIMULATED * (1 - CHANCE));
  private static final int DRAWS = 1_000;
  private static final int[] PARTS = {5, 6, 8, 10, 12, 15, 20, 25, 30};
  private static final int[] OPERATORS = {2, 3, 4, 5, 6, 8, 10};
  private static final int[] REPEATS = {2, 3, 4, 5};

  private final Assumed assumed;
  private final StudySettings settings;

  /**
   * What is expected: GRR in percent of the study variation; how the gauge's variance is shared out
   * among operators, their interaction and (the rest) repeatability; of the product's variance, the
   * share between places on a piece.
   */
  public record Assumed(
      double gaugePercent, double operatorShare, double interactionShare, double placeShare) {
    public Assumed {
      if (!(gaugePercent > 0 && gaugePercent < 100)) {
        throw new BadInput(
            "expected GRR percent", gaugePercent, "is out of range", "above 0 and below 100");
      }
      Check.within("operator share", operatorShare, 0, 1);
      Check.within("interaction share", interactionShare, 0, 1 - operatorShare);
      Check.within("place share", placeShare, 0, 1);
    }

    /** Half of the gauge's variance from operators and their interaction, half from repeats. */
    public static Assumed usual(double gaugePercent) {
      return new Assumed(gaugePercent, 0.4, 0.1, 0.5);
    }

    double gauge() {
      return gaugePercent * gaugePercent / 1e4;
    }
  }

  /**
   * A design with the interval of GRR percent that it gives where all mean squares come out as
   * expected, and the share of simulated studies whose interval decides.
   */
  public record Option(
      int parts, int places, int operators, int repeats, Interval gaugePercent, double chance) {
    public int readings() {
      return parts * Math.max(1, places) * operators * repeats;
    }
  }

  private StudyPlanner(Assumed assumed, StudySettings settings) {
    this.assumed = assumed;
    this.settings = settings;
  }

  /**
   * The crossed or split ({@code places} above 0) design with fewest readings, up to {@code
   * mostReadings}, that decides in 80 % of simulated studies; empty where none does.
   */
  public static Optional<Option> fewest(
      Assumed assumed, int places, int mostReadings, StudySettings settings) {
    StudyPlanner planner = new StudyPlanner(assumed, settings);
    return designs(places).stream()
        .filter(design -> design.readings() <= mostReadings)
        .filter(planner::typicallyDecides)
        .map(design -> planner.evaluated(design, MOST_UNDECIDED))
        .filter(option -> option.chance() >= CHANCE)
        .findFirst();
  }

  /** One design, evaluated. */
  public static Option of(
      Assumed assumed, int parts, int places, int operators, int repeats, StudySettings settings) {
    return new StudyPlanner(assumed, settings)
        .evaluated(new Option(parts, places, operators, repeats, NONE, 0), SIMULATED);
  }

  private static final Interval NONE = new Interval(0, 0, 0);

  private static List<Option> designs(int places) {
    List<Option> designs = new ArrayList<>();
    for (int parts : PARTS) {
      for (int operators : OPERATORS) {
        for (int repeats : REPEATS) {
          designs.add(new Option(parts, places, operators, repeats, NONE, 0));
        }
      }
    }
    designs.sort(
        Comparator.comparingInt(Option::readings)
            .thenComparing(Option::operators, Comparator.reverseOrder()));
    return designs;
  }

  private boolean typicallyDecides(Option design) {
    return decides(gaugePercent(expected(design), 1));
  }

  /** Given up, with a chance too low, once more than so many studies do not decide. */
  private Option evaluated(Option design, int mostUndecided) {
    VarianceComponents expected = expected(design);
    RandomGenerator random = new Well19937c(settings.seed());
    int decided = 0;
    for (int i = 0; i < SIMULATED && i - decided <= mostUndecided; i++) {
      decided += decides(gaugePercent(drawn(expected, random), i)) ? 1 : 0;
    }
    return new Option(
        design.parts(),
        design.places(),
        design.operators(),
        design.repeats(),
        gaugePercent(expected, 1),
        (double) decided / SIMULATED);
  }

  private boolean decides(Interval percent) {
    double limit = settings.criteria().gaugePercent();
    return StudyVerdict.atMost(percent.lower(), percent.upper(), limit) != StudyVerdict.UNDECIDED;
  }

  private Interval gaugePercent(VarianceComponents components, long seed) {
    Interval share =
        new Shares(components, settings.evaluation().confidence(), seed, DRAWS).ofGauge();
    return FigureMaker.roots(share, 100);
  }

  /** The same components with mean squares as a study might find them. */
  private static VarianceComponents drawn(VarianceComponents expected, RandomGenerator random) {
    return expected.replacing(
        square ->
            new MeanSquare(
                square.source(),
                square.value()
                    * new GammaDistribution(random, square.degreesOfFreedom() / 2, 2).sample()
                    / square.degreesOfFreedom(),
                square.degreesOfFreedom()));
  }

  private VarianceComponents expected(Option design) {
    double gauge = assumed.gauge();
    double product = 1 - gauge;
    double operator = gauge * assumed.operatorShare();
    double interaction = gauge * assumed.interactionShare();
    double error = gauge - operator - interaction;
    if (design.places() == 0) {
      CrossedAnova.Size size =
          new CrossedAnova.Size(design.parts(), design.operators(), design.repeats());
      return CrossedAnova.expected(size, product, operator, interaction, error).withInteraction();
    }
    SplitAnova.Size size =
        new SplitAnova.Size(design.parts(), design.places(), design.operators(), design.repeats());
    double place = product * assumed.placeShare();
    return SplitAnova.expected(
            size,
            new SplitAnova.Variances(
                product - place, place, operator, interaction / 2, interaction / 2, error))
        .components();
  }

  /** What to say of an option, or of none. */
  public static String says(@Nullable Option option, Assumed assumed, double limitPercent) {
    String expected = "GRR expected at " + Decimals.significant(assumed.gaugePercent()) + " %";
    if (option == null) {
      return expected
          + ": no design within the bound decides against "
          + Decimals.significant(limitPercent)
          + " %; the expectation is too near the limit.";
    }
    return expected + ": " + words(option);
  }

  private static String words(Option option) {
    return option.parts()
        + " pieces"
        + (option.places() == 0 ? "" : " × " + option.places() + " places")
        + " × "
        + option.operators()
        + " operators × "
        + option.repeats()
        + " repeats = "
        + option.readings()
        + " readings; typical interval "
        + Decimals.significant(option.gaugePercent().lower())
        + " to "
        + Decimals.significant(option.gaugePercent().upper())
        + " %, decides in "
        + Decimals.significant(100 * option.chance())
        + " of 100 simulated studies.";
  }
}
