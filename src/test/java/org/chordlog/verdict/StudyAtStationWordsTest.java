package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** A station where a study is measured says how far it is. */
final class StudyAtStationWordsTest {
  private static String said(int step) {
    StationVerdict verdict =
        new StationVerdict.Builder()
            .add(StudyAtStation.finding(step, 30))
            .when(true, StationIssue.ZERO_STALE)
            .build();
    Statement said = verdict.statement();
    return said.word() + " | " + said.reason() + " | " + said.advice();
  }

  @Test
  void theNextStepOfHowManyIsNamedAndThenThatAllIsMeasured() {
    assertEquals("Gauge study | Step 4 of 30. | The study's page says what to measure.", said(4));
    assertEquals("Gauge study | All 30 steps are measured. | Finish it on its page.", said(0));
  }
}
