package org.chordlog.timer;

import org.slf4j.Logger;

/**
 * What is done again and again and may fail: it is logged the first time, not each time until it
 * succeeds, and is no end of what does it. One thread.
 */
public final class Tried implements Runnable {
  private final Logger log;
  private final String failed;
  private final Runnable work;
  private boolean failing;

  /** {@code failed}: what the log says then. */
  public Tried(Logger log, String failed, Runnable work) {
    this.log = log;
    this.failed = failed;
    this.work = work;
  }

  @Override
  public void run() {
    try {
      work.run();
      failing = false;
    } catch (RuntimeException e) {
      if (!failing) {
        log.atWarn().setCause(e).log(failed);
      }
      failing = true;
    }
  }
}
