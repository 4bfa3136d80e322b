package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.correction.Advice;
import org.chordlog.correction.LevelEstimate;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Specification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is said of a piece, whatever else is found at its station. */
final class PieceVerdictTest {
  private static final Specification ASKED =
      new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0);

  private static PieceVerdict verdict(double radiusMm, Decision decision, StationIssue... issues) {
    RadiusEstimate radius =
        new RadiusEstimate(radiusMm, radiusMm - 2, radiusMm + 2, 1 / radiusMm, 3e-7, 2, 60);
    StationVerdict.Builder found = new StationVerdict.Builder();
    List.of(issues).forEach(issue -> found.when(true, issue));
    return new PieceVerdict(radius, ASKED, decision, found.build());
  }

  private static Statement said(double radiusMm, Decision decision, StationIssue... issues) {
    return verdict(radiusMm, decision, issues).statement();
  }

  @Test
  void aGoodPieceOfASoundStationLeavesTheRollersAlone() {
    Statement said = said(1801, Decision.CONFORMS);
    assertEquals(Tone.GOOD, said.tone());
    assertEquals(PieceVerdict.LEAVE, said.advice().toString());
  }

  /** A gauge, a link or a process that can't be relied on outranks a good piece. */
  @ParameterizedTest
  @EnumSource(
      names = {
        "READINGS_LOST",
        "LINK",
        "INDICATOR",
        "STREAM_DOUBTFUL",
        "NO_BRIDGE",
        "CHECK_FAILED",
        "ZERO_OF_OTHER_BRIDGE",
        "ZERO_MISSING",
        "NOT_IN_CONTROL",
        "MACHINE_MOVED"
      })
  void nothingUrgentStandsBesideLeavingTheRollersAlone(StationIssue issue) {
    Statement said = said(1801, Decision.CONFORMS, issue);
    assertFalse(said.advice().toString().contains(PieceVerdict.LEAVE), said.toString());
    if (issue.forbidsActing()) {
      assertTrue(
          said.advice().toString().startsWith("Don't act on it: "), said.advice().toString());
    }
  }

  @Test
  void aPieceThatIsTooWideIsRolledAgainAndATightOneIsNot() {
    assertEquals("Roll it again.", said(1820, Decision.DOES_NOT_CONFORM).advice().toString());
    assertEquals(
        "Ask before you go on.", said(1780, Decision.DOES_NOT_CONFORM).advice().toString());
    assertEquals(Tone.BAD, said(1780, Decision.DOES_NOT_CONFORM).tone());
  }

  @Test
  void aPieceOutsideThatStandsOutIsMeasuredAgainBeforeItIsRolled() {
    Advice standsOut = new Advice.MeasureAgain(new LevelEstimate(0, 1, 1800, 0, 2));
    Statement said = verdict(1820, Decision.DOES_NOT_CONFORM).statement(standsOut);
    assertEquals("Measure it again.", said.advice().toString());
    assertEquals(Tone.BAD, said.tone());
    Statement doubted =
        verdict(1820, Decision.DOES_NOT_CONFORM, StationIssue.CHECK_FAILED).statement(standsOut);
    assertTrue(doubted.advice().toString().startsWith("Don't act on it: "));
  }

  @Test
  void theMostUrgentFindingIsTheStations() {
    StationVerdict.Builder found = new StationVerdict.Builder();
    found.when(true, StationIssue.CALIBRATION_MISSING).when(true, StationIssue.CHECK_FAILED);
    assertEquals("Last check failed", found.build().statement().word());
    assertFalse(found.build().reliable());
  }
}
