package org.chordlog.station;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Notices that the whole program stood still, as when its process was stopped or its computer
 * suspended: a thread of its own, which does nothing but look at a clock, was not run for so long.
 * That clock is never set, so that a step of the wall clock does not look like it.
 */
final class StandStill implements AutoCloseable {
  /** Pauses to collect garbage and busy processors stay below. */
  static final long LEAST_NANOS = 3_000_000_000L;

  private static final long LOOK_MILLIS = 500;

  /** Seconds since the start of the computer; those of its sleep count, other than in nanoTime. */
  private static final Path UPTIME = Path.of("/proc/uptime");

  private static final Logger LOG = LoggerFactory.getLogger(StandStill.class);

  private final CountDownLatch closed = new CountDownLatch(1);
  private final boolean uptime = Files.isReadable(UPTIME);
  private final LongConsumer stood;

  private StandStill(LongConsumer stood) {
    this.stood = stood;
  }

  /** {@code stood} is told how many microseconds it was, as soon as the program goes on. */
  static StandStill watch(LongConsumer stood) {
    StandStill watch = new StandStill(stood);
    Thread thread = new Thread(watch::run, "stand-still");
    thread.setDaemon(true);
    thread.start();
    return watch;
  }

  private void run() {
    try {
      long before = nanos();
      while (!closed.await(LOOK_MILLIS, TimeUnit.MILLISECONDS)) {
        long now = nanos();
        if (now - before >= LEAST_NANOS) {
          told((now - before) / 1_000);
        }
        before = now;
      }
    } catch (InterruptedException | IOException e) {
      LOG.atWarn().setCause(e).log("nobody looks any more whether the program stands still");
    }
  }

  private void told(long micros) {
    LOG.atWarn().addKeyValue("seconds", micros / 1e6).log("the program stood still");
    try {
      stood.accept(micros);
    } catch (RuntimeException e) {
      LOG.atError().setCause(e).log("a standstill was not recorded");
    }
  }

  private long nanos() throws IOException {
    if (!uptime) {
      return System.nanoTime();
    }
    String text = Files.readString(UPTIME);
    return Math.round(Double.parseDouble(text.substring(0, text.indexOf(' '))) * 1e9);
  }

  @Override
  public void close() {
    closed.countDown();
  }
}
