package org.chordlog.monitor;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The thread "monitor", which brings statistics up to date before somebody asks. Any thread may
 * give it work, which is done in turn; work that fails is logged.
 */
final class Background implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Background.class);
  private static final int CLOSE_SECONDS = 5;

  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          task -> {
            Thread made = new Thread(task, "monitor");
            made.setDaemon(true);
            return made;
          });

  /** Returns at once; after {@link #close} nothing more is done. */
  void run(String what, Runnable work) {
    if (!thread.isShutdown()) {
      thread.execute(() -> attempt(what, work));
    }
  }

  private static void attempt(String what, Runnable work) {
    try {
      work.run();
    } catch (RuntimeException e) {
      LOG.atError().addKeyValue("of", what).setCause(e).log("statistics not brought up to date");
    }
  }

  @Override
  public void close() {
    thread.shutdown();
    try {
      thread.awaitTermination(CLOSE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
