package org.chordlog.timer;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;

/** What a timer does again and again. */
public final class TimedWork {
  private TimedWork() {}

  /** A timer with one thread of that name, which does not keep the program running. */
  public static ScheduledExecutorService timer(String thread) {
    return Executors.newSingleThreadScheduledExecutor(
        work -> {
          Thread made = new Thread(work, thread);
          made.setDaemon(true);
          return made;
        });
  }

  /**
   * The same, with an error handed to where those of a thread go: a timer keeps it for whoever asks
   * how the work ended, and nobody does.
   */
  public static Runnable of(Runnable work) {
    return () -> {
      try {
        work.run();
      } catch (Error e) {
        Thread thread = Thread.currentThread();
        thread.getUncaughtExceptionHandler().uncaughtException(thread, e);
        throw e;
      }
    };
  }
}
