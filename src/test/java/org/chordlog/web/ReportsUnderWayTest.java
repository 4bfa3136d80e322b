package org.chordlog.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.chordlog.web.ReportsUnderWay.ReportProgress;
import org.junit.jupiter.api.Test;

final class ReportsUnderWayTest {
  private static final ReportProgress NONE = new ReportProgress(0, 0);

  private final ReportsUnderWay underWay = new ReportsUnderWay();

  @Test
  void twoOfOneJobEachTellTheirOwnProgress() {
    underWay.follow(
        7,
        "first",
        10,
        first -> {
          first.run();
          first.run();
          return underWay.follow(7, "second", 4, second -> both(first, second));
        });
    assertEquals(NONE, underWay.of(7, "first"));
  }

  private boolean both(Runnable first, Runnable second) {
    second.run();
    first.run();
    assertEquals(new ReportProgress(3, 10), underWay.of(7, "first"));
    assertEquals(new ReportProgress(1, 4), underWay.of(7, "second"));
    assertEquals(NONE, underWay.of(8, "first"));
    assertEquals(NONE, underWay.of(7, ""));
    return true;
  }

  @Test
  void oneThatFailsIsForgotten() {
    assertThrows(IllegalStateException.class, () -> underWay.follow(7, "a", 2, this::fail));
    assertEquals(NONE, underWay.of(7, "a"));
  }

  private boolean fail(Runnable rowDone) {
    rowDone.run();
    throw new IllegalStateException("disk full");
  }
}
