package org.chordlog.web;

import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.chordlog.store.Alerts;
import org.chordlog.timer.TimedWork;
import org.chordlog.timer.Tried;
import org.chordlog.web.event.EventHub;
import org.chordlog.web.event.ServerEvent;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tells open pages that something happened to an alert, whoever stored it. Any thread. */
final class AlertFeed implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(AlertFeed.class);
  private final Alerts alerts;
  private final EventHub hub;
  private long told;
  private final Tried looking =
      new Tried(LOG, "alerts can't be read for open pages; tried again", this::tell);
  private final ScheduledExecutorService timer = TimedWork.timer("alert-feed");

  AlertFeed(Alerts alerts, EventHub hub) {
    this.alerts = alerts;
    this.hub = hub;
  }

  /** How many alerts wait for somebody, and the newest event of any. */
  record Waiting(int waiting, long lastEventId) {}

  void start() {
    var unused = timer.scheduleWithFixedDelay(TimedWork.of(this::look), 1, 1, TimeUnit.SECONDS);
  }

  Waiting now() {
    return new Waiting(alerts.waiting(), alerts.lastEventId());
  }

  /** With which each new listener starts. */
  ServerEvent event() {
    return event(now());
  }

  private static ServerEvent event(Waiting now) {
    return ServerEvent.of("alerts", "", () -> now);
  }

  /** Costs nothing while nobody listens. */
  synchronized void look() {
    looking.run();
  }

  private void tell() {
    if (hub.clientCount() > 0 && alerts.lastEventId() != told) {
      Waiting now = now();
      told = now.lastEventId();
      hub.replace(event(now));
    }
  }

  @Override
  public void close() {
    timer.shutdownNow();
  }
}
