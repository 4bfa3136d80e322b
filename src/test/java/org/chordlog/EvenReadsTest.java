package org.chordlog;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Iterator;
import java.util.List;
import org.junit.jupiter.api.Test;

final class EvenReadsTest {
  @Test
  void isOverAfterSoManyValues() throws Exception {
    assertEquals(45L, lastAsked(30, List.of(10L, 20L, 30L, 45L, 60L)));
  }

  @Test
  void whatComesInOneLumpDoesNotCount() throws Exception {
    assertEquals(130L, lastAsked(30, List.of(10L, 20L, 100L, 110L, 120L, 130L, 140L)));
  }

  /** The count at which the wait was over. */
  private static long lastAsked(int values, List<Long> counts) throws Exception {
    Iterator<Long> next = counts.iterator();
    long[] last = new long[1];
    EvenReads.await(() -> last[0] = next.next(), values);
    return last[0];
  }
}
