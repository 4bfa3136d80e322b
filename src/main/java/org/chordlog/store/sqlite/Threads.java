package org.chordlog.store.sqlite;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.TimeUnit;

/** Daemon threads, which do not keep the process alive. */
final class Threads {
  private Threads() {}

  /** Waits so long for what is still under way. */
  static void end(ExecutorService service, int seconds) {
    service.shutdown();
    try {
      boolean unused = service.awaitTermination(seconds, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }
}
