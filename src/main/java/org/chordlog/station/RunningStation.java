package org.chordlog.station;

import java.util.concurrent.TimeUnit;
import org.chordlog.link.Backoff;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** A station with its thread. */
record RunningStation(
    Station station, StationActions actions, MasterActions masters, LinkLoop loop, Thread thread) {
  static final long MOST_STOP_NANOS = 1_500_000_000L;
  private static final Logger LOG = LoggerFactory.getLogger(RunningStation.class);
  private static final long AFTER_CLOSE_MILLIS = 300;

  static RunningStation start(StationSettings settings, StationContext around, Backoff backoff) {
    Station station = new Station(settings, around);
    Mailbox mailbox = new Mailbox(settings.name());
    LinkLoop loop =
        new LinkLoop(
            settings.link(),
            backoff,
            mailbox,
            around.clock(),
            Math.round(settings.silenceSeconds() * 1e9),
            settings.polled() || settings.link().hasFootSwitch(),
            station.link());
    Thread thread = new Thread(loop, "station-" + settings.name());
    thread.setDaemon(true);
    thread.setUncaughtExceptionHandler(
        (where, e) ->
            LOG.atError()
                .addKeyValue("station", settings.name())
                .setCause(e)
                .log("the station has stopped"));
    thread.start();
    StationActions actions = new StationActions(station, mailbox, around);
    MasterActions masters = new MasterActions(settings, actions, around);
    return new RunningStation(station, actions, masters, loop, thread);
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
