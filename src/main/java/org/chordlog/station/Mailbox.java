package org.chordlog.station;

import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * What others ask of a station, done one after the other by the station's own thread. Any thread
 * may ask; only that thread does what waits.
 */
final class Mailbox {
  private static final int MOST_WAITING = 64;

  private final String station;
  private final BlockingQueue<Runnable> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
  private boolean closed;

  Mailbox(String station) {
    this.station = station;
  }

  /** Something asked for: whoever asked may take it back as long as it was not begun. */
  record Asked<T>(CompletableFuture<T> answer, AtomicBoolean begun) {
    /** Whether it will never be done. */
    boolean takenBack() {
      return begun.compareAndSet(false, true);
    }

    private void run(Supplier<T> work) {
      if (begun.compareAndSet(false, true)) {
        complete(answer, work);
      }
    }
  }

  /** The answer comes with the future; a {@link BadInput} when it was refused. */
  <T> Asked<T> ask(Supplier<T> work) {
    Asked<T> asked = new Asked<>(new CompletableFuture<>(), new AtomicBoolean());
    if (!offer(() -> asked.run(work))) {
      asked
          .answer()
          .completeExceptionally(
              new BadInput("station", station, "is stopped or busy", "try again shortly"));
    }
    return asked;
  }

  /** Ends a wait for something to do; a full box wakes by itself. */
  void wake() {
    boolean unused = offer(() -> {});
  }

  private synchronized boolean offer(Runnable task) {
    return !closed && waiting.offer(task);
  }

  private static <T> void complete(CompletableFuture<T> answer, Supplier<T> work) {
    try {
      answer.complete(work.get());
    } catch (RuntimeException e) {
      answer.completeExceptionally(e);
    }
  }

  /** Does what waits, without waiting for more. */
  void doWhatWaits() {
    for (Runnable task = waiting.poll(); task != null; task = waiting.poll()) {
      task.run();
    }
  }

  /** Does what waits and what comes within that time at most; true if there was something. */
  boolean doWithin(long nanos) throws InterruptedException {
    @Nullable Runnable task = waiting.poll(nanos, TimeUnit.NANOSECONDS);
    if (task != null) {
      task.run();
      doWhatWaits();
    }
    return task != null;
  }

  /** Takes no more, and does what still waits. */
  void close() {
    synchronized (this) {
      closed = true;
    }
    doWhatWaits();
  }
}
