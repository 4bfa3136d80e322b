package org.chordlog.correction;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.chordlog.correction.Advice.Correct;
import org.chordlog.correction.StartSetting.Basis;
import org.chordlog.correction.Told.JobStart;
import org.chordlog.correction.Told.Lot;
import org.chordlog.correction.Told.Lot.Offset;
import org.chordlog.correction.Told.SetUp;
import org.junit.jupiter.api.Test;

/** What is carried over from lot to lot and from job to job. */
final class MemoryTest {
  private static final double[] EIGHT = {0.2, -0.1, 0.1, 0, -0.2, 0.1, 0.1, -0.1};

  /** Permil of 1800 mm: 500 is 1200 mm, 1000 is 900 mm. */
  private static double[] eight(double level) {
    double[] values = EIGHT.clone();
    for (int i = 0; i < values.length; i++) {
      values[i] += level;
    }
    return values;
  }

  @Test
  void aLotThatComesAgainIsForeseen() {
    Bench bench = Bench.known().pieces(eight(0)).tell(new Lot("B")).pieces(eight(7));
    bench.tell(new Lot("A"));
    assertEquals(0, bench.belief().level(), 0.7);
    bench.pieces(eight(0)).tell(new Lot("B"));
    Correct before = assertInstanceOf(Correct.class, bench.advice(), "before the first piece");
    assertEquals(-7 / 45.0, before.move().amount(), 0.03);
  }

  /** A to B and B to C are known: so is A to C. */
  @Test
  void lotsAreKnownByWayOfAThird() {
    Bench bench = Bench.known().pieces(eight(0)).tell(new Lot("B")).pieces(eight(5));
    bench.tell(new Lot("C")).pieces(eight(-3)).tell(new Lot("A"));
    assertEquals(0, bench.belief().level(), 1);
  }

  @Test
  void correctionsWithinALotAreNoPartOfItsStep() {
    Bench bench = Bench.known().pieces(eight(0)).tell(new Lot("B")).pieces(7, 7);
    bench.corrected(10, 9.85).pieces(eight(7 - 0.15 * 45)).tell(new Lot("A"));
    assertEquals(-0.15 * 45, bench.belief().level(), 1);
  }

  @Test
  void unnamedLotsAreNeverKnown() {
    Bench bench = new Bench(Bench.dial(Bench.KNOWN)).job("").pieces(eight(0));
    bench.tell(new Lot("")).pieces(eight(7)).tell(new Lot(""));
    assertEquals(7, bench.belief().level(), 0.5);
    assertEquals(Advice.Action.TOO_EARLY, bench.advice().action());
  }

  @Test
  void aCertificateForetellsTheStep() {
    Bench bench = Bench.known().pieces(eight(0));
    bench.tell(new Lot("B", new Offset(-6 * Bench.UNIT, 0.8 * Bench.UNIT)));
    assertEquals(-6, bench.belief().level(), 0.5);
    Correct advice = assertInstanceOf(Correct.class, bench.advice());
    assertEquals(6 / 45.0, advice.move().amount(), 0.02);
  }

  /** The shift is a curvature: it holds for another radius of that section. */
  @Test
  void lotsAreKnownAtAnotherRadius() {
    Bench bench = Bench.known().pieces(eight(0)).tell(new Lot("B")).pieces(eight(7));
    bench.tell(new JobStart(2, Aim.symmetric(900, 6), "other", "tube", "A", null));
    bench.pieces(eight(1000)).tell(new Lot("B"));
    assertEquals(3.5, bench.belief().level(), 0.5);
  }

  private static JobStart again(long job, String lot) {
    return new JobStart(job, Bench.AIM, "hoop", "tube", lot, null);
  }

  private static Bench onceBent() {
    Bench bench = Bench.known().tell(new SetUp(10.0)).pieces(9, 9);
    return bench.corrected(10, 9.8).pieces(eight(0));
  }

  @Test
  void aPartThatReturnsStartsWhereItCameOutRight() {
    Bench bench = onceBent();
    StartSetting start = bench.corrector.startSetting(again(2, "A"));
    assertNotNull(start);
    assertEquals(9.8, start.setting(), 0.02);
    assertEquals(Basis.SAME_LOT, start.basis());
    bench.tell(again(2, "A"));
    assertEquals(start, bench.corrector.snapshot().start());
    bench.tell(new SetUp(9.8));
    assertTrue(bench.belief().levelUncertainty() < 3);
    bench.pieces(0.5);
    assertNull(bench.corrector.snapshot().start());
    assertEquals(0, bench.belief().level(), 0.5);
  }

  /** Set elsewhere than where it was right, the level is known by the gain. */
  @Test
  void aSetUpToAnotherNumberIsAllowedFor() {
    Bench bench = onceBent().tell(again(2, "A")).tell(new SetUp(9.9));
    assertEquals(0.1 * 45, bench.belief().level(), 1.2);
  }

  @Test
  void anotherLotIsAllowedForWhereItIsKnown() {
    Bench bench = onceBent().tell(new Lot("B")).pieces(eight(7)).tell(again(2, "B"));
    StartSetting start = bench.corrector.snapshot().start();
    assertEquals(Basis.KNOWN_LOT, Objects.requireNonNull(start).basis());
    assertEquals(9.8 - 7 / 45.0, start.setting(), 0.05);
    StartSetting unknown = bench.corrector.startSetting(again(2, "Z"));
    assertEquals(Basis.OTHER_LOT, Objects.requireNonNull(unknown).basis());
    assertTrue(unknown.standardUncertaintyPermil() > start.standardUncertaintyPermil());
  }

  /** Between two radii of one section on the straight line, alone only if it is near. */
  @Test
  void aNewRadiusOfAKnownSection() {
    Bench bench = onceBent();
    JobStart far = new JobStart(2, Aim.symmetric(1200, 8), "far", "tube", "A", null);
    assertNull(bench.corrector.startSetting(far), "too far for the gain alone");
    JobStart near = new JobStart(2, Aim.symmetric(1780, 12), "near", "tube", "A", null);
    StartSetting start = bench.corrector.startSetting(near);
    assertEquals(Basis.OTHER_RADIUS, Objects.requireNonNull(start).basis());
    assertEquals(9.8 + 11.2 / 45, start.setting(), 0.05);
    assertNull(
        bench.corrector.startSetting(
            new JobStart(2, Aim.symmetric(1780, 12), "near", "bar", "A", null)));
    bench.tell(far).tell(new SetUp(20.0)).pieces(eight(500));
    JobStart between = new JobStart(3, Aim.symmetric(1600, 12), "b", "tube", "A", null);
    StartSetting found = bench.corrector.startSetting(between);
    double share = (1 / 1600.0 - 1 / 1800.0) / (1 / 1200.0 - 1 / 1800.0);
    assertEquals(9.8 + share * (20 - 9.8), Objects.requireNonNull(found).setting(), 0.05);
  }

  @Test
  void tablesAreBounded() {
    Bench bench = Bench.known();
    for (int i = 0; i < 3 * Recent.MOST; i++) {
      bench.pieces(eight(i % 3)).tell(new Lot("lot " + i));
    }
    int size = bench.corrector.checkpoint().length;
    for (int i = 0; i < 3 * Recent.MOST; i++) {
      bench.pieces(eight(i % 3)).tell(new Lot("lot " + i));
    }
    assertEquals(size, bench.corrector.checkpoint().length, 600);
    assertTrue(size < 60_000, "bytes: " + size);
  }
}
