package org.chordlog.notify.rule;

import static java.util.Objects.requireNonNull;
import static org.chordlog.measure.alert.AlertFigure.PIECES_LEFT;
import static org.chordlog.measure.alert.AlertFigure.PIECES_LEFT_AT_LEAST;
import static org.chordlog.measure.alert.AlertFigure.SINCE_PIECE;
import static org.chordlog.measure.alert.AlertKind.LIMIT_AHEAD;
import static org.chordlog.measure.alert.AlertKind.ROLLER_CREEPS;
import static org.chordlog.measure.alert.AlertKind.ROLLER_JUMPED;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.stats.drift.MachineStatistics;
import org.jspecify.annotations.Nullable;
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

  private MachineJudgement judgement() {
    return new MachineJudgement("M", machine.verdict(LIMITS.relative()), LIMITS, piece);
  }

  private Optional<Found> judge(AlertKind... open) {
    MachineJudgement now = judgement();
    streaks = streaks.after(now);
    return streaks.appeared(now, Set.of(open));
  }

  private static @Nullable AlertKind kind(Optional<Found> found) {
    return found.map(each -> each.key().kind()).orElse(null);
  }

  private static @Nullable Double figure(Optional<Found> found, AlertFigure figure) {
    return found.map(each -> each.evidence().figure(figure)).orElse(null);
  }

  @ParameterizedTest
  @CsvSource({"14, 0, false", "15, 0, true", "29, 15, false", "30, 15, true", "61, 16, true"})
  void aMachineIsJudgedAtEachFifteenPieces(long complete, long judged, boolean due) {
    assertEquals(due, MachineStreaks.due(complete, judged));
  }

  @Test
  void oneJudgementIsNotEnoughForAJumpAndTwoAre() {
    bend(60, 0, 0);
    assertNull(kind(judge()));
    bend(45, 5, 0);
    assertNull(kind(judge()));
    assertEquals(ROLLER_JUMPED, kind(judge()));
    assertFalse(streaks.gone().contains(ROLLER_JUMPED));
  }

  @Test
  void aCreepIsToldAfterThreeJudgementsAndOverAfterTwoWithoutIt() {
    bend(30, 0, 0);
    assertNull(kind(judge()));
    bend(60, 0, 0.05);
    assertNull(kind(judge()));
    assertNull(kind(judge()));
    assertEquals(ROLLER_CREEPS, kind(judge()));
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
    assertNull(kind(streaks.appeared(quiet, Set.of(ROLLER_CREEPS))));
  }

  /** As sure as can be that it creeps, but by less than a tenth of the tolerance in 200 pieces. */
  @Test
  void whatDoesNotMatterAgainstTheToleranceIsNotTold() {
    bend(300, 0, 0.003);
    assertNull(kind(judge()));
    assertFalse(machine.verdict(null).findings().isEmpty());
    assertNull(kind(judge()));
    assertNull(kind(judge()));
  }

  /** One cause, one alert: a creep that was told says that it nears a limit. */
  @Test
  void aCreepSaysThatItNearsALimitAndTheLimitIsNotToldBesideIt() {
    bend(100, -3, 0.04);
    assertNull(kind(judge()));
    assertNull(kind(judge()));
    Optional<Found> creep = judge();
    assertEquals(ROLLER_CREEPS, kind(creep));
    assertNull(figure(creep, PIECES_LEFT_AT_LEAST));
    assertTrue(requireNonNull(figure(creep, PIECES_LEFT)) > 50, creep::toString);
    bend(60, 1, 0.04);
    judge(ROLLER_CREEPS);
    judge(ROLLER_CREEPS);
    Optional<Found> near = judge(ROLLER_CREEPS);
    assertEquals(ROLLER_CREEPS, kind(near));
    double left = requireNonNull(figure(near, PIECES_LEFT));
    double least = requireNonNull(figure(near, PIECES_LEFT_AT_LEAST));
    assertTrue(0 <= least && least < left && least <= 50, left + " and " + least);
    Alert told = raised(creep.orElseThrow());
    assertTrue(near.orElseThrow().worseThan(told));
    assertEquals(LIMIT_AHEAD, told.withEvidence(near.orElseThrow().evidence()).treatedAs());
    assertFalse(near.orElseThrow().worseThan(raised(near.orElseThrow())));
  }

  private static Alert raised(Found found) {
    return AlertRule.appears(found, null, List.of(), 1).orElseThrow().alert();
  }

  /** A creep so slow that it is not told by itself. */
  @Test
  void aNearLimitIsToldAloneWhereItsCreepIsSlowAndNoCreepIsToldBesideItLater() {
    bend(600, 2.5, 0.0025);
    assertNull(kind(judge()));
    assertNull(kind(judge()));
    Optional<Found> limit = judge();
    assertEquals(LIMIT_AHEAD, kind(limit));
    assertTrue(requireNonNull(figure(limit, SINCE_PIECE)) > 0, limit::toString);
    bend(60, 4, 0.05);
    for (int i = 0; i < 3; i++) {
      assertEquals(LIMIT_AHEAD, kind(judge(LIMIT_AHEAD)));
    }
  }

  @Test
  void aMoveToldAsACreepIsReplacedWhereItTurnsOutToBeAJump() {
    bend(60, 0, 0);
    judge();
    bend(45, 5, 0);
    judge(ROLLER_CREEPS);
    Optional<Found> jump = judge(ROLLER_CREEPS);
    assertEquals(ROLLER_JUMPED, kind(jump));
    assertEquals(Set.of(ROLLER_CREEPS, LIMIT_AHEAD), MachineStreaks.replaced(judgement(), jump));
    assertEquals(Set.of(), MachineStreaks.replaced(judgement(), Optional.empty()));
  }

  @Test
  void tooFewPiecesChangeNothing() {
    bend(5, 0, 0);
    MachineStreaks before = new MachineStreaks(1, 1, 1, 1, 1);
    streaks = before;
    assertNull(kind(judge()));
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
