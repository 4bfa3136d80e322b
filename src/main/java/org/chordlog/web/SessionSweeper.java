package org.chordlog.web;

import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.chordlog.account.Sessions;
import org.chordlog.timer.TimedWork;
import org.chordlog.timer.Tried;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Ends sessions that are over, so that a page left open shows nothing more. */
final class SessionSweeper implements AutoCloseable {
  private static final int SECONDS = 10;
  private static final Logger LOG = LoggerFactory.getLogger(SessionSweeper.class);
  private final Sessions sessions;
  private final ScheduledExecutorService timer = TimedWork.timer("sessions");

  SessionSweeper(Sessions sessions) {
    this.sessions = sessions;
  }

  void start() {
    var unused =
        timer.scheduleWithFixedDelay(
            TimedWork.of(
                new Tried(
                    LOG, "sessions that are over were not ended; tried again", sessions::sweep)),
            SECONDS,
            SECONDS,
            TimeUnit.SECONDS);
  }

  @Override
  public void close() {
    timer.shutdownNow();
  }
}
