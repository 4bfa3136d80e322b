package org.chordlog.link;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

final class BackoffTest {
  private static final long SECOND = 1_000_000_000L;

  private static Backoff seeded() {
    return Backoff.forPorts(new SplittableRandom(7));
  }

  @Test
  void doublesFromOneSecondToTenWithJitterOfTheUpperHalf() {
    Backoff backoff = seeded();
    for (long most : new long[] {1, 2, 4, 8, 10, 10, 10}) {
      long wait = backoff.next();
      assertTrue(wait >= most * SECOND / 2 && wait <= most * SECOND, most + ": " + wait);
    }
  }

  @Test
  void theSameSeedGivesTheSameWaits() {
    Backoff one = seeded();
    Backoff other = seeded();
    LongStream.range(0, 20).forEach(i -> assertEquals(one.next(), other.next()));
  }

  @Test
  void startsOverOnlyAfterAStableLink() {
    Backoff backoff = seeded();
    fail(backoff, 5);
    backoff.stood(29 * SECOND);
    assertTrue(backoff.next() >= 5 * SECOND);
    backoff.stood(30 * SECOND);
    assertTrue(backoff.next() <= SECOND);
  }

  @Test
  void theShortestWaitIsAlwaysWithinASecond() {
    Backoff backoff = seeded();
    fail(backoff, 5);
    assertTrue(backoff.shortest() <= SECOND);
  }

  private static void fail(Backoff backoff, int times) {
    for (int i = 0; i < times; i++) {
      long unused = backoff.next();
    }
  }
}
