package org.chordlog.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.util.Objects;
import org.junit.jupiter.api.Test;

final class PassTallyTest {
  private final PassTally tally = new PassTally();

  @Test
  void noPiece() {
    assertEquals(PassSummary.NONE, tally.summary());
    assertEquals(0, tally.summary().shareRolledAgain());
  }

  /** By hand: the second pass changes by −100 and −120 mm, the third by −20. */
  @Test
  void whatEachPassDid() {
    tally.add(1, "middle", 1, 1900);
    tally.add(1, "middle", 2, 1800);
    tally.add(2, "middle", 1, 1801);
    tally.add(3, "middle", 1, 1940);
    tally.add(3, "middle", 2, 1820);
    tally.add(3, "middle", 3, 1800);
    PassSummary summary = tally.summary();
    assertEquals(3, summary.pieces());
    assertEquals(2, summary.meanPasses());
    assertEquals(2, summary.rolledAgain());
    assertEquals(2 / 3.0, summary.shareRolledAgain());
    assertEquals(2, summary.passes().size());
    PassSummary.Pass second = summary.passes().get(0);
    assertEquals(2, second.pass());
    assertEquals(2, second.places());
    assertEquals(-110, second.meanChangeMm(), 1e-9);
    assertEquals(Math.sqrt(200), Objects.requireNonNull(second.standardDeviationMm()), 1e-9);
    PassSummary.Pass third = summary.passes().get(1);
    assertEquals(-20, third.meanChangeMm(), 1e-9);
    assertNull(third.standardDeviationMm());
  }

  @Test
  void theLastReadingOfAPlaceInAPassCountsAndPlacesAreKeptApart() {
    tally.add(1, "start", 1, 1900);
    tally.add(1, "start", 1, 1890);
    tally.add(1, "end", 1, 1850);
    tally.add(1, "start", 2, 1800);
    PassSummary summary = tally.summary();
    assertEquals(1, summary.passes().get(0).places());
    assertEquals(-90, summary.passes().get(0).meanChangeMm(), 1e-9);
  }
}
