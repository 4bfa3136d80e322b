package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.chordlog.verdict.GapWords;
import org.junit.jupiter.api.Test;

final class GapTallyTest {
  private final GapTally tally = new GapTally(List.of("left", "middle", "right"));

  private void measured(int piece, String... positions) {
    for (String position : positions) {
      tally.add(piece, position, true);
    }
  }

  @Test
  void aWholePieceLacksNothingAndOneExcludedReadingTakenAgainNeither() {
    measured(1, "left", "middle", "right");
    tally.add(2, "left", false);
    measured(2, "left", "middle", "right");
    assertEquals(List.of(), tally.gaps());
    assertEquals("", GapWords.of(tally.gaps()));
    assertEquals(2, tally.pieces());
  }

  @Test
  void namesThePositionsThatAPieceLacksAndWhy() {
    measured(1, "left", "middle");
    measured(2, "middle");
    tally.add(2, "left", false);
    tally.add(3, "left", false);
    tally.add(3, "middle", false);
    assertEquals(
        "Piece 1 was not measured at right."
            + " Piece 2 was not measured at right and has no reading that counts at left."
            + " Piece 3 has no reading that counts.",
        GapWords.of(tally.gaps()));
  }

  @Test
  void theNewestPieceMayStillBeAtTheGauge() {
    assertEquals(Optional.empty(), tally.newestGap());
    measured(1, "left", "middle");
    measured(2, "left");
    assertEquals("Piece 1 was not measured at right.", GapWords.of(tally.gapsBeforeNewest()));
    assertEquals(
        "Piece 2 was not measured at middle, right.",
        tally.newestGap().map(GapWords::of).orElse(""));
  }

  @Test
  void ofManyPiecesTheFirstAreNamed() {
    for (int piece = 1; piece <= 5; piece++) {
      measured(piece, "left", "middle");
    }
    assertEquals(
        "5 pieces lack a reading at a planned position. The first:"
            + " Piece 1 was not measured at right. Piece 2 was not measured at right."
            + " Piece 3 was not measured at right.",
        GapWords.of(tally.gaps()));
  }
}
