package org.chordlog.forward;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

final class WaitsTest {
  private static final long SECOND = 1_000_000_000L;

  /** Gives the highest wait that is possible. */
  private static final RandomGenerator HIGHEST =
      new RandomGenerator() {
        @Override
        public long nextLong() {
          return Long.MAX_VALUE;
        }

        @Override
        public long nextLong(long bound) {
          return bound - 1;
        }
      };

  @Test
  void theBoundDoublesFromASecondToFiveMinutes() {
    Waits waits = new Waits(HIGHEST);
    for (long seconds : new long[] {1, 2, 4, 8, 16, 32, 64, 128, 256, 300, 300}) {
      assertEquals(seconds * SECOND, waits.next());
    }
    waits.worked(59 * SECOND);
    assertEquals(300 * SECOND, waits.next());
    waits.worked(60 * SECOND);
    assertEquals(SECOND, waits.next());
  }

  /** So that the computers of a plant do not come back together. */
  @Test
  void aWaitIsAnyTimeUpToTheBound() {
    double sum = 0;
    for (int seed = 0; seed < 2_000; seed++) {
      Waits waits = new Waits(new Random(seed));
      for (int i = 0; i < 8; i++) {
        long unused = waits.next();
      }
      long wait = waits.next();
      assertTrue(wait >= 0 && wait <= 256 * SECOND);
      sum += (double) wait / SECOND;
    }
    // mean of a uniform time up to 256 s: 128 s with a standard error of 256/sqrt(12 * 2000) = 1.7
    // s
    assertEquals(128, sum / 2_000, 5 * 1.7);
  }

  @Test
  void aBatchAndItsPauseKeepToTheLimitOfTheLine() {
    BatchSize whole = BatchSize.of(0);
    assertEquals(5_000, whole.rows());
    assertEquals(0, whole.pause(2_000_000, 1));
    BatchSize slow = BatchSize.of(16);
    assertEquals(80, slow.rows());
    assertEquals(32_000, slow.bytes());
    assertEquals(2 * SECOND, slow.pause(32_000, 0));
    assertEquals(SECOND / 2, slow.pause(16_000, SECOND / 2));
    assertEquals(0, slow.pause(16_000, 2 * SECOND));
    assertEquals(10, BatchSize.of(PlantSettings.LEAST_KILOBYTES).rows() / 2);
  }
}
