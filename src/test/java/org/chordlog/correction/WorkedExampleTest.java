package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.MachineScale.Tighter;
import org.chordlog.correction.Told.Correction;
import org.chordlog.correction.Told.Piece;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Seven readings by hand: gain 40 ± 12 permil a unit, level 0 ± 13 permil, 1800 ± 12 mm, readings
 * to 1/3 permil, error of a move 0.01 units; what is advised is done and recorded. The expected
 * digits were recomputed in another language (double precision); there is no published source.
 */
final class WorkedExampleTest {
  private static final double TARGET = 1800;
  private static final double UNIT = 1 / 1000.0 / TARGET;
  private static final double SCALE_BEFORE = 25;
  private static final double[] READINGS = {9, -3, 1, 0.5, 8.5, 7, 0.8};

  /** Variance of the reading, weights (steady, jumped, stray), level, gain, P, c, V. */
  private static final double[][] FILTER = {
    {
      4.938271604938272,
      0.986821699908325,
      0.004687494974607196,
      0.008490805117067766,
      8.714636292002751,
      40,
      5.4689559646425225,
      0,
      144.00000000000003
    },
    {
      4.938271604938272, 0.9913617648185336, 0.0035552089816802855, 0.005083026199786261,
      -1.873545465770885, 46.468665113410594, 3.5228790705620074, -8.768864636224732,
      94.1895497300194
    },
    {
      4.938271604938272, 0.9928629547708201, 0.0030348932034272914, 0.0041021520257525455,
      -0.6581999013136831, 43.543729164940245, 2.1136006076775304, -5.0624847554584465,
      85.31292006519523
    },
    {
      5.375661375661376, 0.9953283825884744, 0.002081552442858955, 0.002590064968666445,
      -0.3189415406291925, 42.77516567810179, 1.5813486992029533, -3.5792339616267044,
      81.95580359987119
    },
    {
      4.719328703703703, 0.47435491413584435, 0.17382451849908814, 0.3518205673650676,
      2.2113332960704484, 40.23309161789414, 9.173889854333257, -2.405597102210602,
      86.10994270172753
    },
    {
      7.75051440329218, 0.9903063465296214, 0.004301606710521665, 0.005392046759857027,
      4.820773080254759, 39.564045528854116, 4.310989021885056, -1.0993955152966546,
      85.7768953879488
    },
    {
      7.087962962962962, 0.9948456232516264, 0.0024282928479248153, 0.0027260839004487015,
      0.5166136821307453, 39.128256677886434, 3.2643431152956985, -5.931464159044391,
      76.65637206109375
    }
  };

  /** Benefit in pieces at the limit, chance to improve, amount advised (0: none), its u. */
  private static final double[][] DECISION = {
    {23.46104488475997, 0.9687852208798777, -0.19987697917437502, 0.08769262967110163},
    {1.3024757654639465, 0.6911446420843246, 0, 0.03707980013306181},
    {0.1297215616947817, 0.5895426605617495, 0, 0.03231558681502335},
    {-0.009389400612785752, 0.5504562004371476, 0, 0.028940949375797644},
    {1.4287875859642272, 0.6424614198974935, 0, 0.07740481777920472},
    {7.297663532488326, 0.8771605767592972, -0.11485129332430784, 0.06114583644072048},
    {-0.008846939213549865, 0.55684216465332, 0, 0.04736207443718429}
  };

  private final Corrector corrector = new Corrector(scale(), tuning());
  private double setting = SCALE_BEFORE;

  static MachineScale scale() {
    GainPrior gain = new GainPrior(40 * UNIT, 12 * UNIT);
    return new MachineScale("machine's scale", "mm", 0, Tighter.UNKNOWN, 0, 0.01, gain);
  }

  /** Level after the set-up 0 ± 13 permil at a tolerance of 20/3. */
  static Tuning tuning() {
    Tuning usual = Tuning.usual();
    return new Tuning(
        new Tuning.Priors(1.95, 0.7, 1 / 3.0, 4),
        usual.surprises(),
        usual.stakes(),
        usual.wander());
  }

  @BeforeEach
  void begin() {
    corrector.tell(new Told.JobStart(1, Aim.symmetric(TARGET, 12), "hoop", "", "A", null));
  }

  private Advice measure(int piece) {
    double perMm = (1 + READINGS[piece] / 1000) / TARGET;
    double u = UNIT / 3;
    corrector.tell(new Piece(piece + 1, List.of(new PieceReading("", 1, perMm, u, false))));
    return corrector.advice();
  }

  private void follow(Advice advice) {
    if (advice instanceof Correct correct) {
      double after = setting + correct.move().amount();
      corrector.tell(Correction.between(setting, after));
      setting = after;
    }
  }

  private static void same(double[] expected, double[] found, int piece) {
    for (int i = 0; i < expected.length; i++) {
      double allowed = 1e-9 * Math.abs(expected[i]) + 1e-11;
      assertEquals(expected[i], found[i], allowed, "piece " + (piece + 1) + ", column " + i);
    }
  }

  @Test
  void everyDigitOfTheFilter() {
    for (int piece = 0; piece < READINGS.length; piece++) {
      Advice advice = measure(piece);
      NewestReading newest = corrector.state().filter().newest();
      Belief now = corrector.state().filter().belief();
      double[] found = {
        newest.variance(),
        newest.steady(),
        newest.jumped(),
        newest.stray(),
        now.level(),
        now.gain(),
        now.levelVariance(),
        now.covariance(),
        now.gainVariance()
      };
      same(FILTER[piece], found, piece);
      follow(advice);
    }
  }

  @Test
  void everyDigitOfTheDecision() {
    for (int piece = 0; piece < READINGS.length; piece++) {
      Advice advice = measure(piece);
      Choice choice = corrector.state().adviser().choice();
      Double amount = advice.amount();
      double[] found = {
        15 * choice.saving(),
        choice.chance(),
        amount == null ? 0 : amount,
        choice.standardUncertainty()
      };
      same(DECISION[piece], found, piece);
      follow(advice);
    }
  }

  @Test
  void kindsOfAdviceInTheirOrder() {
    List<Advice.Action> said =
        IntStream.range(0, READINGS.length)
            .mapToObj(
                piece -> {
                  Advice advice = measure(piece);
                  follow(advice);
                  return advice.action();
                })
            .toList();
    assertEquals(
        List.of(
            Advice.Action.CORRECT,
            Advice.Action.TOO_EARLY,
            Advice.Action.LEAVE,
            Advice.Action.LEAVE,
            Advice.Action.MEASURE_AGAIN,
            Advice.Action.CORRECT,
            Advice.Action.LEAVE),
        said);
  }

  @Test
  void theSixthInWords() {
    for (int piece = 0; piece < 5; piece++) {
      follow(measure(piece));
    }
    Correct advice = assertInstanceOf(Correct.class, measure(5));
    assertEquals(
        "Level 8.6 mm too tight (± 7.4). Open by 0.115\u00a0mm (± 0.122) on the machine's scale, from"
            + " 24.8 to 24.685: likely to help (88 %). Pieces out of tolerance: now 29 %, then"
            + " 7 %.",
        advice.text().toString());
    double[] shares = {advice.prospect().outBefore(), advice.prospect().outAfter()};
    // without what the gain's uncertainty adds to the level, afterwards 0.055376
    assertArrayEquals(new double[] {0.292686, 0.070151}, shares, 5e-7);
  }
}
