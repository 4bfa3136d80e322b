package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;

/** Several readings of a piece give one value. */
final class PositionsTest {
  private final RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(12);

  private static PieceReading at(String position, double permil) {
    return Bench.reading(permil).at(position, 1);
  }

  /** Ten whole pieces whose end is tighter than their start by {@code apart}. */
  private Bench shown(double apart, double spread) {
    Bench bench = Bench.known();
    for (int i = 0; i < 10; i++) {
      double level = spread * random.nextGaussian();
      bench.piece(
          at("start", level - apart / 2 + 0.3 * random.nextGaussian()),
          at("end", level + apart / 2 + 0.3 * random.nextGaussian()));
    }
    return bench;
  }

  @Test
  void theMeanOfAWholePieceIsItsValue() {
    Bench whole = Bench.known().piece(at("start", 2), at("middle", 6), at("end", 7));
    Bench one = Bench.known().pieces(5);
    assertEquals(one.belief().level(), whole.belief().level(), 0.05);
    Bench often = Bench.known().piece(at("start", 2), at("start", 4), at("end", 7));
    Bench once = Bench.known().piece(at("start", 3), at("end", 7));
    assertEquals(once.belief().level(), often.belief().level(), 1e-3);
  }

  @Test
  void theLastPassCounts() {
    Bench passes = Bench.known().piece(Bench.reading(-300).at("", 1), Bench.reading(2).at("", 2));
    assertEquals(Bench.known().pieces(2).belief(), passes.belief());
  }

  /** A position's offset is allowed for when it is the only one measured. */
  @Test
  void onlyOnePositionMeasured() {
    Bench bench = shown(4, 1);
    double level = bench.belief().level();
    double scatter = bench.corrector.state().filter().scatterVariance();
    bench.piece(at("start", level - 2));
    assertEquals(level, bench.belief().level(), 0.2);
    double partly = bench.corrector.state().filter().newest().variance();
    assertTrue(partly > scatter + 0.02, "less is known of a piece measured at one place");
  }

  @Test
  void positionsThatDifferAreSaidAndTheirMiddleAimedAt() {
    Bench bench = Bench.known();
    for (int i = 0; i < 8; i++) {
      bench.piece(at("start", -3), at("middle", -2), at("end", 5));
    }
    assertTrue(bench.notices().contains(Notice.Kind.POSITIONS_DIFFER));
    Notice notice = bench.corrector.snapshot().notices().get(0);
    assertTrue(
        notice.text().toString().startsWith("end and start differ by 14.38 mm (± 0.71)"),
        notice.text().toString());
    assertEquals(-1, bench.corrector.state().aimedAt(), 0.02);
    Bench even = Bench.known();
    for (int i = 0; i < 8; i++) {
      even.piece(at("start", 0.1 * i), at("end", 0.1 * (7 - i)));
    }
    assertTrue(even.notices().isEmpty(), even.notices()::toString);
  }

  @Test
  void theStartOfTheBendForetellsTheRest() {
    Bench bench = shown(2, 2);
    double level = bench.belief().level();
    RestOfPiece rest = bench.corrector.restOfPiece(at("start", level - 1 + 9));
    assertNotNull(rest);
    double expected = 1800 / (1 + (level + 1 + 9) / 1000);
    assertEquals(expected, rest.radiusMm(), 3, "nearly all of it");
    assertNotNull(rest.amount());
    assertEquals(-(level + 10) / 45, rest.amount(), 0.06);
    assertTrue(rest.outAfter() < rest.outBefore());
    assertTrue(rest.text().toString().contains("take it back"), rest.text().toString());
    assertNull(
        Objects.requireNonNull(bench.corrector.restOfPiece(at("start", level - 1))).amount());
  }

  @Test
  void tooFewPiecesSayNothingOfTheRest() {
    assertNull(shown(2, 2).corrector.restOfPiece(at("elsewhere", 1)));
    Bench four = Bench.known();
    for (int i = 0; i < 4; i++) {
      four.piece(at("start", -1), at("end", 1));
    }
    assertNull(four.corrector.restOfPiece(at("start", 9)));
    assertNull(Bench.known().pieces(1, 2, 3, 4, 5, 6).corrector.restOfPiece(Bench.reading(9)));
  }

  @Test
  void readinessAfterTheSetUp() {
    Bench bench = Bench.known().pieces(3);
    Readiness first = bench.corrector.snapshot().learned().readiness();
    assertEquals(1, Objects.requireNonNull(first).pieces());
    assertTrue(first.nextOut() > 0.05, first.text().toString());
    for (int i = 0; i < 30; i++) {
      bench.pieces(0.8 * random.nextGaussian());
    }
    Readiness then = bench.corrector.snapshot().learned().readiness();
    assertTrue(Objects.requireNonNull(then).capability() > 1.33, then.text());
    assertEquals(0, then.piecesToCome());
    assertTrue(then.text().startsWith("Trial pieces done"), then.text());
  }

  @Test
  void whatNoSettingReachesIsSaidWithWhatIsAskedFor() {
    assertEquals(
        "However the rollers are set, these pieces vary too much for a Cp of 1.33."
            + " Chance that the next piece is out of tolerance: 0.6 %.",
        new Readiness(12, 1.28, null, null, 0.006).text());
  }
}
