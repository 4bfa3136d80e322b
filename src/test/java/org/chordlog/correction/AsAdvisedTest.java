package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** One invented machine under two operators, with the same chance. */
final class AsAdvisedTest {
  private static final double PERMIL_PER_UNIT = 45;
  private static final Tuning TUNING = Tuning.usual();

  /** What an operator does after a piece. */
  private interface Operator {
    double move(Bench bench, double permil);
  }

  private static final Operator IGNORES = (bench, permil) -> 0;
  private static final Operator CHASES = (bench, permil) -> -permil / PERMIL_PER_UNIT;
  private static final Operator FOLLOWS =
      (bench, permil) -> bench.advice().amount() == null ? 0 : bench.advice().amount();

  /** A machine set up 9 permil too tight that creeps open by 0.05 permil a piece. */
  private static Bench bent(Operator operator, int pieces, long seed) {
    Random random = new Random(seed);
    Bench bench = Bench.known();
    double level = 9;
    for (int i = 0; i < pieces; i++) {
      level -= 0.05;
      double permil = level + 1.7 * random.nextGaussian();
      bench.pieces(permil);
      double move = operator.move(bench, permil);
      if (move != 0) {
        bench.tell(Told.Correction.by(move));
        level += PERMIL_PER_UNIT * move;
      }
    }
    return bench;
  }

  private static Optional<AsAdvised> of(Bench bench) {
    CorrectionSnapshot now = bench.corrector.snapshot();
    return AsAdvised.of(now.trail(), Bench.AIM, now.learned().scale(), TUNING);
  }

  @Test
  void whoFollowedEveryAdviceSeesTwiceTheSame() {
    AsAdvised found = of(bent(FOLLOWS, 100, 1)).orElseThrow();
    assertEquals(100, found.pieces());
    assertEquals(found.bent().corrections(), found.advised().corrections(), 1);
    assertEquals(found.bent().rootMeanSquareMm(), found.advised().rootMeanSquareMm(), 0.3);
  }

  /**
   * The replay foretells what a second machine with the same chance shows whose operator follows.
   */
  @Test
  void whatWasIgnoredIsComparedWithTheSameMachineAdvised() {
    for (long seed = 1; seed <= 20; seed++) {
      AsAdvised ignored = of(bent(IGNORES, 100, seed)).orElseThrow();
      AsAdvised followed = of(bent(FOLLOWS, 100, seed)).orElseThrow();
      assertEquals(0, ignored.bent().corrections());
      assertTrue(ignored.advised().rootMeanSquareMm() < 0.6 * ignored.bent().rootMeanSquareMm());
      assertTrue(ignored.advised().out() < ignored.bent().out());
      assertEquals(
          followed.bent().rootMeanSquareMm(), ignored.advised().rootMeanSquareMm(), 0.8, "" + seed);
    }
  }

  @Test
  void chasingEachReadingIsSeenToCost() {
    double bent = 0;
    double advised = 0;
    for (long seed = 1; seed <= 20; seed++) {
      AsAdvised chased = of(bent(CHASES, 100, seed)).orElseThrow();
      assertEquals(100, chased.bent().corrections());
      bent += chased.bent().rootMeanSquareMm();
      advised += chased.advised().rootMeanSquareMm();
    }
    assertTrue(advised < 0.9 * bent, advised + " against " + bent);
  }

  /** What people state, ± 30 %, is enough, and what it leaves open is said. */
  @Test
  void howWellTheScaleIsKnownIsSaidWithWhatComesOfIt() {
    GainPrior stated = new GainPrior(45 * Bench.UNIT, 0.3 * 45 * Bench.UNIT);
    Bench bench = new Bench(Bench.dial(stated)).job("A").pieces(offBy(9, 30));
    AsAdvised found = of(bench).orElseThrow();
    assertTrue(found.doubt().relative() > 0.55, "twice 30 %: no correction taught more");
    double advised = found.advised().rootMeanSquareMm();
    double bent = found.bent().rootMeanSquareMm();
    assertTrue(advised < found.doubt().less().rootMeanSquareMm(), "a unit does 60 % less");
    assertTrue(found.doubt().less().rootMeanSquareMm() < bent);
    assertTrue(found.doubt().more().rootMeanSquareMm() < bent);
    double better = of(bent(FOLLOWS, 100, 1)).orElseThrow().doubt().relative();
    assertTrue(better < 0.2, "± 10 % at first, and learned from");
  }

  private static double[] offBy(double permil, int pieces) {
    Random random = new Random(3);
    return random.doubles(pieces, permil - 3, permil + 3).toArray();
  }

  /** Only what came after a correction of which nobody knows the amount can be compared. */
  @Test
  void whatCantBeComparedIsLeftOut() {
    Bench bench = bent(IGNORES, 30, 1).tell(Told.Correction.withoutAmount());
    bench.pieces(offBy(5, 12));
    AsAdvised found = of(bench).orElseThrow();
    assertEquals(12, found.pieces());
    assertEquals(0, found.bent().corrections());
    assertEquals(Bench.AIM.mm(5), found.bent().rootMeanSquareMm(), 2);
  }

  @Test
  void nothingIsSaidWhereItWouldBeAGuess() {
    assertTrue(of(bent(IGNORES, 9, 1)).isEmpty(), "too few pieces");
    Bench unknown = bent(IGNORES, 30, 1).tell(Told.Correction.withoutAmount()).pieces(1, 1);
    assertTrue(of(unknown).isEmpty(), "an amount that nobody recorded");
    Bench blind = new Bench(Bench.dial(GainPrior.unknown())).job("A");
    List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11).forEach(each -> blind.pieces(0.1 * each));
    assertTrue(of(blind).isEmpty(), "a scale of which nothing is known");
    Bench other = bent(IGNORES, 30, 1).tell(new Told.TargetChange(Aim.symmetric(1900, 12)));
    assertTrue(of(other.pieces(1, 1)).isEmpty(), "another target");
  }
}
