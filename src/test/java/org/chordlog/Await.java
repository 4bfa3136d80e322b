package org.chordlog;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Waiting in tests: for a condition, with a deadline that is later on a busy machine. Looks at ever
 * longer intervals, so that looking takes no time from what is waited for. What took too long is
 * named by the source line that waits, and by what there was instead.
 */
public final class Await {
  private static final long LAST_LOOK_MILLIS = 50;

  private Await() {}

  public static void until(Callable<Boolean> condition) throws Exception {
    until(condition, () -> "");
  }

  /** {@code seen} is asked when it has taken too long: what there is instead. */
  public static void until(Callable<Boolean> condition, Callable<?> seen) throws Exception {
    until(condition, seen, LAST_LOOK_MILLIS);
  }

  /** As {@link #until(Callable, Callable)}; answers what was found. */
  public static <T> T found(Callable<Optional<T>> look, Callable<?> seen) throws Exception {
    List<T> found = new ArrayList<>(1);
    until(() -> look.call().map(found::add).orElse(false), seen);
    return found.get(0);
  }

  /** For a condition that holds for some milliseconds only: looks at each of them. */
  public static void closely(Callable<Boolean> condition) throws Exception {
    until(condition, () -> "", 1);
  }

  private static void until(Callable<Boolean> condition, Callable<?> seen, long lastLookMillis)
      throws Exception {
    long start = System.nanoTime();
    long pauseMillis = 1;
    while (!condition.call()) {
      Duration waited = Duration.ofNanos(System.nanoTime() - start);
      if (Patience.isOver(waited)) {
        throw tooLong(waited, seen);
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(pauseMillis));
      pauseMillis = Math.min(lastLookMillis, 2 * pauseMillis);
    }
  }

  /** Waits for the end of a program. */
  public static void end(Process process) throws Exception {
    until(() -> !process.isAlive(), () -> "process " + process.pid() + " still runs");
  }

  private static AssertionError tooLong(Duration waited, Callable<?> seen) throws Exception {
    return new AssertionError(
        "not within %d s at a load of %.1f a processor: %s %s"
            .formatted(waited.toSeconds(), Patience.load(), WaitingLine.text(), seen.call()));
  }
}
