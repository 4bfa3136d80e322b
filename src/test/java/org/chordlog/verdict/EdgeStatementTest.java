package org.chordlog.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.verdict.EdgeStatement.Delivery;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a plant says of a workshop computer. */
final class EdgeStatementTest {
  private static EdgeStatement of(Delivery delivery, long backlog, long silent, String trouble) {
    return new EdgeStatement("hall-1", delivery, 852, backlog, silent, trouble, 0);
  }

  @Test
  void whatHasNothingMissingIsComplete() {
    Statement said = of(Delivery.COMPLETE, 0, 3, "").statement();
    assertEquals(Tone.GOOD, said.tone());
    assertEquals("All records of hall-1 are here, up to reading 852.", said.reason().toString());
  }

  @Test
  void whatCatchesUpIsNoTroubleUntilItSaysSo() {
    Statement catching = of(Delivery.BEHIND, 1, 3, "").statement();
    assertEquals(Tone.QUIET, catching.tone());
    assertEquals("1 record of hall-1 is not here yet.", catching.reason().toString());
    Statement held = of(Delivery.BEHIND, 40, 3, "the disk is full").statement();
    assertEquals(Tone.OPEN, held.tone());
    assertEquals(
        "40 records of hall-1 are not here yet. hall-1 says: the disk is full.",
        held.reason().toString());
  }

  @Test
  void whatHasAllHereMayBeInTroubleAllTheSame() {
    Statement said = of(Delivery.COMPLETE, 0, 3, "job 7 is damaged").statement();
    assertEquals(Tone.OPEN, said.tone());
    assertEquals(
        "All records of hall-1 are here; it says: job 7 is damaged.", said.reason().toString());
  }

  @ParameterizedTest
  @CsvSource({
    "119, 119 seconds",
    "120, 2 minutes",
    "7199, 119 minutes",
    "7200, 2 hours",
    "172799, 47 hours",
    "172800, 2 days"
  })
  void silenceIsSaidInTheUnitThatFits(long seconds, String words) {
    Statement said = of(Delivery.SILENT, 0, seconds, "").statement();
    assertEquals(Tone.BAD, said.tone());
    assertEquals(
        "Nothing was heard from hall-1 for "
            + words
            + "; what it measures meanwhile is kept there.",
        said.reason().toString());
  }

  @ParameterizedTest
  @CsvSource(
      nullValues = "none",
      textBlock =
          """
          2000, none
          2001, Its clock is 2 seconds ahead of the plant's.
          -3600000, Its clock is 60 minutes behind the plant's.
          """)
  void aClockIsMentionedFromTwoSecondsOn(long aheadMillis, String words) {
    EdgeStatement said = new EdgeStatement("hall-1", Delivery.COMPLETE, 1, 0, 0, "", aheadMillis);
    assertEquals(words, said.clock().map(each -> each.reason().toString()).orElse(null));
  }
}
