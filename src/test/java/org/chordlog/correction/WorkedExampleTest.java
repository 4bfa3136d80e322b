package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import java.util.stream.IntStream;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.LevelFilter.Newest;
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
      4.9382716049382722,
      0.98682169990832502,
      0.0046874949746071957,
      0.0084908051170677658,
      8.7146362920027514,
      40,
      5.4689559646425225,
      0,
      144.00000000000003
    },
    {
      4.9382716049382722, 0.99136176481853355, 0.0035552089816802855, 0.0050830261997862614,
      -1.873545465770885, 46.468665113410594, 3.5228790705620074, -8.7688646362247322,
      94.189549730019394
    },
    {
      4.9382716049382722, 0.99286295477082009, 0.0030348932034272914, 0.0041021520257525455,
      -0.65819990131368311, 43.543729164940245, 2.1136006076775304, -5.0624847554584465,
      85.312920065195229
    },
    {
      5.3756613756613758, 0.99532838258847445, 0.0020815524428589552, 0.0025900649686664448,
      -0.3189415406291925, 42.775165678101793, 1.5813486992029533, -3.5792339616267044,
      81.955803599871189
    },
    {
      4.7193287037037033, 0.47435491413584435, 0.17382451849908814, 0.35182056736506762,
      2.2113332960704484, 40.233091617894139, 9.1738898543332574, -2.405597102210602,
      86.109942701727533
    },
    {
      7.75051440329218, 0.99030634652962135, 0.0043016067105216653, 0.0053920467598570273,
      4.8207730802547593, 39.564045528854116, 4.3109890218850557, -1.0993955152966546,
      85.776895387948798
    },
    {
      7.0879629629629619, 0.9948456232516264, 0.0024282928479248153, 0.0027260839004487015,
      0.51661368213074532, 39.128256677886434, 3.2643431152956985, -5.9314641590443911,
      76.656372061093748
    }
  };

  /** Benefit in pieces at the limit, chance to improve, amount advised (0: none), its u. */
  private static final double[][] DECISION = {
    {23.461044884759971, 0.96878522087987773, -0.19987697917437502, 0.087692629671101627},
    {1.3024757654639465, 0.69114464208432458, 0, 0.037079800133061808},
    {0.12972156169478169, 0.58954266056174953, 0, 0.032315586815023348},
    {-0.0093894006127857518, 0.5504562004371476, 0, 0.028940949375797644},
    {1.4287875859642272, 0.6424614198974935, 0, 0.077404817779204715},
    {7.2976635324883263, 0.87716057675929715, -0.11485129332430784, 0.061145836440720483},
    {-0.0088469392135498651, 0.55684216465332004, 0, 0.047362074437184293}
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
      Newest newest = corrector.state().filter().newest();
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
        "Level 8.6 mm too tight (± 7.5). Open by 0.115 mm (± 0.122) on the machine's scale, from"
            + " 24.800 to 24.685: likely to help (88 %). Pieces out of tolerance: now 29 %, then"
            + " 6 %.",
        advice.text());
    double[] shares = {advice.prospect().outBefore(), advice.prospect().outAfter()};
    assertArrayEquals(new double[] {0.292686, 0.055376}, shares, 5e-7);
  }
}
