package org.chordlog.notify.rule;

import static java.util.Objects.requireNonNull;
import static org.chordlog.measure.alert.AlertKind.LIMIT_AHEAD;
import static org.chordlog.measure.alert.AlertKind.ROLLER_CREEPS;
import static org.chordlog.measure.alert.AlertKind.ROLLER_JUMPED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.stats.drift.MachineStatistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Judgements of the statistics themselves, fed with invented pieces of one sigma of scatter. */
final class MachineStreaksTest {
  private static final double SIGMA = 1e-3;

  /** Cp 1.33: ± 4 sigma. */
  private static final MachineLimits LIMITS = new MachineLimits(1000, 4);

  private final MachineStatistics machine = new MachineStatistics();
  private final Random random = new Random(3);
  private MachineStreaks streaks = MachineStreaks.NONE;
  private int piece;

  private void bend(int pieces, double from, double perPiece) {
    for (int i = 0; i < pieces; i++) {
      piece++;
      double off = from + perPiece * i + random.nextGaussian();
      machine.add(1, piece, piece * 60_000_000L, SIGMA * off);
      machine.endPiece();
    }
  }

  private List<AlertKind> judge() {
    MachineJudgement now =
        new MachineJudgement("M", machine.verdict(LIMITS.relative()), LIMITS, piece);
    streaks = streaks.after(now);
    List<AlertKind> kinds = new ArrayList<>();
    streaks.appeared(now).forEach(each -> kinds.add(each.key().kind()));
    return kinds;
  }

  @ParameterizedTest
  @CsvSource({"14, 0, false", "15, 0, true", "29, 15, false", "30, 15, true", "61, 16, true"})
  void aMachineIsJudgedAtEachFifteenPieces(long complete, long judged, boolean due) {
    assertEquals(due, MachineStreaks.due(complete, judged));
  }

  @Test
  void oneJudgementIsNotEnoughForAJumpAndTwoAre() {
    bend(60, 0, 0);
    assertEquals(List.of(), judge());
    bend(45, 5, 0);
    assertEquals(List.of(), judge());
    assertEquals(List.of(ROLLER_JUMPED), judge());
    assertFalse(streaks.gone().contains(ROLLER_JUMPED));
  }

  @Test
  void aCreepIsToldAfterThreeJudgementsAndOverAfterTwoWithoutIt() {
    bend(30, 0, 0);
    assertEquals(List.of(), judge());
    bend(60, 0, 0.05);
    assertEquals(List.of(), judge());
    assertEquals(List.of(), judge());
    assertTrue(judge().contains(ROLLER_CREEPS));
    MachineStatistics steady = new MachineStatistics();
    for (int i = 1; i <= 60; i++) {
      steady.add(1, i, i, SIGMA * random.nextGaussian());
      steady.endPiece();
    }
    MachineJudgement quiet =
        new MachineJudgement("M", steady.verdict(LIMITS.relative()), LIMITS, 60);
    streaks = streaks.after(quiet);
    assertFalse(streaks.gone().contains(ROLLER_CREEPS));
    streaks = streaks.after(quiet);
    assertTrue(streaks.gone().contains(ROLLER_CREEPS));
    assertEquals(List.of(), streaks.appeared(quiet));
  }

  /** As sure as can be that it creeps, but by less than a tenth of the tolerance in 200 pieces. */
  @Test
  void whatDoesNotMatterAgainstTheToleranceIsNotTold() {
    bend(300, 0, 0.003);
    assertEquals(List.of(), judge());
    assertFalse(machine.verdict(null).findings().isEmpty());
    assertEquals(List.of(), judge());
    assertEquals(List.of(), judge());
  }

  @Test
  void aLimitIsToldWhenItMayBeReachedWithinFiftyPieces() {
    bend(100, -3, 0.04);
    assertEquals(List.of(), judge());
    assertEquals(List.of(), judge());
    assertTrue(judge().contains(ROLLER_CREEPS));
    bend(60, 1, 0.04);
    List<AlertKind> told = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      told.addAll(judge());
    }
    assertTrue(told.contains(LIMIT_AHEAD), told::toString);
    MachineJudgement now =
        new MachineJudgement("M", machine.verdict(LIMITS.relative()), LIMITS, piece);
    Found found = now.found(LIMIT_AHEAD);
    double left = requireNonNull(found.evidence().figure(AlertFigure.PIECES_LEFT));
    double least = requireNonNull(found.evidence().figure(AlertFigure.PIECES_LEFT_AT_LEAST));
    assertTrue(0 <= least && least < left && least <= 50, left + " and " + least);
  }

  @Test
  void tooFewPiecesChangeNothing() {
    bend(5, 0, 0);
    MachineStreaks before = new MachineStreaks(1, 1, 1, 1, 1);
    streaks = before;
    assertEquals(List.of(), judge());
    assertEquals(before, streaks);
  }

  @Test
  void whatIsStoredComesBack() {
    assertEquals(0, MachineStreaks.NONE.packed());
    for (int i = 0; i < 500; i++) {
      MachineStreaks some =
          new MachineStreaks(
              random.nextInt(8),
              random.nextInt(8),
              random.nextInt(8),
              random.nextInt(8),
              random.nextInt(8));
      assertEquals(some, MachineStreaks.unpacked(some.packed()));
    }
  }
}
