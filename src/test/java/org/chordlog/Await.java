package org.chordlog;

import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Waiting in tests: for a condition, with a deadline. */
public final class Await {
  private static final long SECONDS = 30;
  private static final long LOOK_MILLIS = 5;

  private Await() {}

  public static void until(Callable<Boolean> condition) throws Exception {
    long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    while (!condition.call()) {
      if (System.nanoTime() - deadline > 0) {
        throw new AssertionError("not within " + SECONDS + " s");
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(LOOK_MILLIS));
    }
  }
}
