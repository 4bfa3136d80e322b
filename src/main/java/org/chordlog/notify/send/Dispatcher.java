package org.chordlog.notify.send;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.chordlog.notify.channel.MailServer;
import org.chordlog.notify.people.Retry;
import org.chordlog.notify.settings.AlertSettings;
import org.chordlog.store.Outbox;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.State;
import org.chordlog.store.Store;
import org.chordlog.timer.TimedWork;
import org.chordlog.timer.Tried;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Tells people and programs of alerts while the service runs: one thread decides, and each channel
 * has one that sends, so that a slow mail server holds up no webhook. Nobody waits for them.
 */
public final class Dispatcher implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Dispatcher.class);
  public static final Duration USUAL_PAUSE = Duration.ofSeconds(5);
  private static final int STOP_SECONDS = 2;
  private static final Duration KEPT = Duration.ofDays(90);
  private static final Duration RECENT = Duration.ofDays(1);
  private static final int MOST_PROBLEMS = 5;
  private static final int MOST_COUNTED = 1_000;

  private final Store store;
  private final Clock clock;
  private final Decider decider;
  private final Composer composer;
  private final List<Courier> couriers = new ArrayList<>();
  private final BooleanSupplier turn;
  private final ScheduledExecutorService threads;
  private final Duration pause;
  private Instant nextForgetting = Instant.MIN; // of the thread that decides

  /** Does nothing until {@link #start}. */
  public Dispatcher(AlertSettings settings, Store store, Clock clock) {
    this(settings, store, clock, USUAL_PAUSE, () -> true);
  }

  /**
   * {@code pause} between two rounds; {@code turn}: whether it is this program that tells now,
   * where several have the same store.
   */
  public Dispatcher(
      AlertSettings settings, Store store, Clock clock, Duration pause, BooleanSupplier turn) {
    this.pause = pause;
    this.turn = turn;
    this.store = store;
    this.clock = clock;
    Outbox outbox = store.outbox();
    decider = new Decider(settings, store.alerts(), outbox);
    composer = new Composer(settings.roster(), outbox);
    @Nullable MailServer mail = settings.mail();
    if (mail != null) {
      couriers.add(
          new Courier(
              Channel.MAIL, Retry.MAIL, outbox, clock, new ByMail(settings, mail, store, clock)));
    }
    if (!settings.webhooks().isEmpty()) {
      couriers.add(
          new Courier(
              Channel.WEBHOOK,
              Retry.WEBHOOK,
              outbox,
              clock,
              new ByWebhook(settings, store, clock)));
    }
    AtomicInteger number = new AtomicInteger();
    threads =
        Executors.newScheduledThreadPool(
            1 + couriers.size(), task -> daemon(task, "alerts-" + number.incrementAndGet()));
  }

  private static Thread daemon(Runnable task, String name) {
    Thread thread = new Thread(task, name);
    thread.setDaemon(true);
    return thread;
  }

  /** Starts its threads, once. An attempt that fails is logged and made again. */
  public Dispatcher start() {
    every(
        () -> {
          decide();
          composer.compose(clock.instant());
        });
    couriers.forEach(each -> every(each::run));
    return this;
  }

  private void every(Runnable task) {
    Tried tried =
        new Tried(LOG, "alerts could not be told; they are tried again", () -> inTurn(task));
    var unused =
        threads.scheduleWithFixedDelay(
            TimedWork.of(tried), 0, pause.toMillis(), TimeUnit.MILLISECONDS);
  }

  private void inTurn(Runnable task) {
    if (turn.getAsBoolean()) {
      task.run();
    }
  }

  private void decide() {
    Instant now = clock.instant();
    decider.begin();
    decider.decide(now);
    if (!now.isBefore(nextForgetting)) {
      store.outbox().forget(Micros.of(now.minus(KEPT)));
      nextForgetting = now.plus(RECENT);
    }
  }

  /** One round of everything, as the threads do it. */
  void round() {
    decide();
    composer.compose(clock.instant());
    couriers.forEach(Courier::run);
  }

  /** Any thread. */
  public DeliveryStatus status() {
    Outbox outbox = store.outbox();
    Outbox.Counts counts = outbox.counts();
    Instant recently = clock.instant().minus(RECENT);
    List<String> problems = new ArrayList<>();
    for (State each : List.of(State.FAILED, State.WAITING)) {
      outbox.newest(each, Micros.of(recently), MOST_PROBLEMS).stream()
          .filter(delivery -> !delivery.progress().problem().isEmpty())
          .map(Dispatcher::problem)
          .distinct()
          .forEach(problems::add);
    }
    return new DeliveryStatus(
        counts.unsent() + counts.waiting(),
        counts.delivered(),
        counts.failed(),
        outbox.newest(State.FAILED, Micros.of(recently), MOST_COUNTED).size(),
        problems);
  }

  private static String problem(Delivery delivery) {
    return (delivery.progress().state() == State.FAILED
            ? "not delivered to "
            : "not yet delivered to ")
        + delivery.to().name()
        + ": "
        + delivery.progress().problem();
  }

  @Override
  public void close() {
    threads.shutdownNow();
    try {
      boolean unused = threads.awaitTermination(STOP_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
