package org.chordlog.timer;

/** What a timer does again and again. */
public final class TimedWork {
  private TimedWork() {}

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
