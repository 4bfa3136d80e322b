package org.chordlog.station;

import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The thread of a link. */
record LinkThread(LinkLoop loop, Thread thread) {
  private static final Logger LOG = LoggerFactory.getLogger(LinkThread.class);
  private static final long AFTER_CLOSE_MILLIS = 300;

  static LinkThread start(LinkLoop loop, String station, String name) {
    Thread thread = new Thread(loop, name);
    thread.setDaemon(true);
    thread.setUncaughtExceptionHandler(
        (where, e) ->
            LOG.atError()
                .addKeyValue("station", station)
                .setCause(e)
                .log("the thread of a link has stopped"));
    thread.start();
    return new LinkThread(loop, thread);
  }

  void stop() {
    loop.stop();
  }

  /** A thread that hangs in its link is freed by closing the link under it. */
  void awaitStop(long deadlineNanos) {
    try {
      join(Math.max(1, TimeUnit.NANOSECONDS.toMillis(deadlineNanos - System.nanoTime())));
      if (thread.isAlive()) {
        loop.closeLink();
        join(AFTER_CLOSE_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void join(long millis) throws InterruptedException {
    thread.join(millis);
  }
}
