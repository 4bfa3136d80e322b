package org.chordlog.forward;

import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.Plant;
import org.chordlog.store.Store;
import org.chordlog.store.StoreException;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.postgres.PlantConnections;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Delivers what is committed here to the plant's database, on the thread "forward" by one
 * connection, and tries again for as long as it can't. Nobody waits for it.
 */
public final class Forwarder implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Forwarder.class);
  private static final long IDLE_NANOS = Duration.ofMillis(500).toNanos();
  private static final long REQUESTS_NANOS = Duration.ofSeconds(2).toNanos();
  private static final long ALIVE_NANOS = Duration.ofSeconds(30).toNanos();
  private static final int STOP_SECONDS = 5;
  private static final int MOST_TROUBLE = 500;

  /** Opens a connection to the plant's database. */
  public interface Connector {
    Connection open() throws SQLException;
  }

  private final PlantSettings settings;
  private final Connector connector;
  private final Store store;
  private final Feed feed;
  private final InstantSource clock;
  private final Waits waits;
  private final BatchSize size;
  private final PageReader pages;
  private final ForwardMeter meter;
  private final CountDownLatch closing = new CountDownLatch(1);
  private final Thread thread = new Thread(this::run, "forward");
  private volatile @Nullable PlantLink link;

  /** Of the thread. */
  private long requestsNanos;

  /** Of the thread. */
  private long aliveNanos;

  /** Of the thread: what the plant was told to be wrong here. */
  private String told = "";

  /** Does nothing until {@link #start}; {@code random} spreads the attempts of a whole plant. */
  Forwarder(
      PlantSettings settings,
      BatchSize size,
      Connector connector,
      Store store,
      InstantSource clock,
      RandomGenerator random) {
    this.settings = settings;
    this.connector = connector;
    this.store = store;
    this.feed = store.feed().orElseThrow();
    this.clock = clock;
    this.waits = new Waits(random);
    this.size = size;
    this.pages = new PageReader(feed, size);
    this.meter = new ForwardMeter(settings.address().url(), store);
    thread.setDaemon(true);
  }

  /** With the computer's own clock. */
  public static Forwarder of(PlantSettings settings, Store store) {
    return new Forwarder(
        settings,
        BatchSize.of(settings.kilobytesASecond()),
        () -> PlantConnections.open(settings.address(), "chordlog " + settings.edge()),
        store,
        InstantSource.system(),
        new SecureRandom());
  }

  /**
   * Starts its thread, once. Whatever fails is said by its status and tried again until it is
   * closed.
   */
  public Forwarder start() {
    thread.start();
    return this;
  }

  private void run() {
    while (!closed()) {
      long began = System.nanoTime();
      try {
        deliver();
      } catch (SQLException | StoreException | BadInput | ForwardProblem.Refused e) {
        failed(ForwardProblem.of(e), e);
      } catch (RuntimeException e) {
        failed(ForwardProblem.of(e), e);
        LOG.atError().setCause(e).log("the delivery to the plant failed; it is tried again");
      }
      waits.worked(System.nanoTime() - began);
      pause(waits.next());
    }
  }

  private void failed(ForwardProblem problem, Exception e) {
    if (!closed() && meter.failed(problem)) {
      LOG.atWarn().setCause(e).log("nothing is delivered to the plant: {}", problem.sentence());
    }
  }

  private void deliver() throws SQLException {
    try (PlantLink open = new PlantLink(connector.open(), settings, feed)) {
      link = open;
      FeedPlace at = open.hello(nowMicros());
      meter.connected(at);
      LOG.atInfo().addKeyValue("reading", at.readingId()).log("connected to the plant");
      requestsNanos = 0;
      aliveNanos = System.nanoTime();
      while (!closed()) {
        at = round(open, at);
      }
    } finally {
      link = null;
    }
  }

  private FeedPlace round(PlantLink open, FeedPlace at) throws SQLException {
    long began = System.nanoTime();
    PageReader.Ready ready = pages.after(at);
    FeedPage page = ready.page();
    if (page.count() == 0 && page.to().equals(at)) {
      idle(open, page);
      return at;
    }
    told = trouble();
    long bytes = open.deliver(ready, () -> new PlantLink.Word(nowMicros(), told));
    aliveNanos = System.nanoTime();
    meter.delivered(page, nowMicros());
    answer(open);
    pause(size.pause(bytes, System.nanoTime() - began));
    return page.to();
  }

  private void idle(PlantLink open, FeedPage page) throws SQLException {
    answer(open);
    String trouble = trouble();
    if (System.nanoTime() - aliveNanos > ALIVE_NANOS || !trouble.equals(told)) {
      told = trouble;
      open.alive(page.rest(), new PlantLink.Word(nowMicros(), told));
      aliveNanos = System.nanoTime();
    }
    pause(IDLE_NANOS);
  }

  /** What is wrong with the records here, though they are delivered. */
  private String trouble() {
    StoreHealth health = store.health();
    String said = health.fault().isEmpty() ? String.join("; ", health.warnings()) : health.fault();
    return said.substring(0, Math.min(MOST_TROUBLE, said.length()));
  }

  private void answer(PlantLink open) throws SQLException {
    if (requestsNanos != 0 && System.nanoTime() - requestsNanos < REQUESTS_NANOS) {
      return;
    }
    requestsNanos = System.nanoTime();
    try {
      answer(open.requests());
    } catch (StoreException e) {
      LOG.atDebug().setCause(e).log("requests of the plant wait: the store takes no changes");
    }
  }

  private void answer(PlantRequests requests) throws SQLException {
    RequestHand hand = new RequestHand(store);
    for (Plant.Request each : requests.open()) {
      requests.answer(each.id(), hand.does(each, nowMicros()));
    }
  }

  private long nowMicros() {
    Instant now = clock.instant();
    return TimeUnit.SECONDS.toMicros(now.getEpochSecond()) + now.getNano() / 1_000;
  }

  private boolean closed() {
    return closing.getCount() == 0;
  }

  private void pause(long nanos) {
    try {
      boolean unused = closing.await(nanos, TimeUnit.NANOSECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      closing.countDown();
    }
  }

  /** Any thread. */
  public ForwardStatus status() {
    return meter.status();
  }

  /** What was begun and not committed at the plant is delivered after the next start. */
  @Override
  public void close() {
    closing.countDown();
    try {
      thread.join(TimeUnit.SECONDS.toMillis(1));
      PlantLink open = link;
      if (open != null) {
        open.abort();
      }
      thread.join(TimeUnit.SECONDS.toMillis(STOP_SECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (SQLException e) {
      LOG.atDebug().setCause(e).log("the connection to the plant did not end");
    }
    pages.close();
    meter.close();
  }
}
