package org.chordlog.notify.send;

import java.time.Clock;
import java.util.List;
import org.chordlog.notify.channel.Outcome;
import org.chordlog.notify.people.Retry;
import org.chordlog.store.Outbox;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Progress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Attempts what is due on one channel and notes how it went. One thread. */
final class Courier {
  private static final Logger LOG = LoggerFactory.getLogger(Courier.class);
  private static final int PAGE = 50;

  /** Where so many in a row fail, the others wait for the next round, too. */
  private static final int FAILURES = 2;

  /** How one delivery goes out. */
  interface Way {
    Outcome send(Delivery delivery, List<Message> messages);
  }

  private final Channel channel;
  private final Retry retry;
  private final Outbox outbox;
  private final Clock clock;
  private final Way way;

  Courier(Channel channel, Retry retry, Outbox outbox, Clock clock, Way way) {
    this.channel = channel;
    this.retry = retry;
    this.outbox = outbox;
    this.clock = clock;
    this.way = way;
  }

  void run() {
    int failures = 0;
    for (Delivery each : outbox.due(channel, Micros.of(clock.instant()), PAGE)) {
      Outcome outcome = send(each);
      Progress after = Attempts.after(each.progress(), outcome, retry, clock.instant());
      outbox.note(each.id(), after);
      tell(each, after);
      failures = outcome instanceof Outcome.Later ? failures + 1 : 0;
      if (failures == FAILURES || Thread.currentThread().isInterrupted()) {
        return;
      }
    }
  }

  /** What can't even be written is tried again: the store may give what it needs later. */
  private Outcome send(Delivery delivery) {
    try {
      return way.send(delivery, outbox.messages(delivery.id()));
    } catch (RuntimeException e) {
      if (Thread.currentThread().isInterrupted()) {
        return new Outcome.Later("telling was stopped meanwhile");
      }
      LOG.atWarn().addKeyValue("delivery", delivery.id()).setCause(e).log("could not be written");
      return new Outcome.Later("could not be written: " + e.getMessage());
    }
  }

  private static void tell(Delivery delivery, Progress after) {
    switch (after.state()) {
      case DELIVERED ->
          LOG.atDebug().addKeyValue("to", delivery.to().name()).log("an alert was delivered");
      case WAITING ->
          LOG.atWarn()
              .addKeyValue("to", delivery.to().name())
              .addKeyValue("problem", after.problem())
              .log("an alert is not delivered yet");
      case FAILED ->
          LOG.atError()
              .addKeyValue("to", delivery.to().name())
              .addKeyValue("problem", after.problem())
              .log("an alert was not delivered and is given up");
    }
  }
}
