package org.chordlog.web.event;

import io.javalin.http.Context;
import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import org.chordlog.measure.Reading;
import org.chordlog.store.Store;
import org.chordlog.timer.Tried;
import org.chordlog.web.http.Call;
import org.chordlog.web.http.Connections;
import org.chordlog.web.http.Refusal;
import org.chordlog.web.http.Times;
import org.chordlog.web.http.WebSettings;
import org.eclipse.jetty.io.EndPoint;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Hands events to those who listen. Nothing that calls in here ever waits for a client: each has
 * its own queue and thread, and the number of both is bounded.
 */
public final class EventHub implements AutoCloseable {
  static final long HEARTBEAT_MILLIS = 10_000;
  private static final int LONGEST_REPLAY = 1_000;
  private static final long FEED_CHECK_MILLIS = 1_000;
  private static final long CLOSE_MILLIS = 300;
  private static final Logger LOG = LoggerFactory.getLogger(EventHub.class);

  private record Running(EventClient client, Thread sender, EndPoint endPoint) {}

  private final WebSettings settings;
  private final Clock clock;
  private final String epoch;
  private final ReadingFeed feed;
  private final Supplier<List<ServerEvent>> now;
  private final Map<EventClient, Running> clients = new ConcurrentHashMap<>();
  private final Thread feeder;
  private final Semaphore feedDue = new Semaphore(0);
  private final Map<String, ServerEvent> afterReadings = new ConcurrentHashMap<>();
  private volatile boolean closed;

  /** {@code now} gives the states with which each new client starts. */
  public EventHub(
      WebSettings settings,
      Clock clock,
      Store store,
      Function<Reading, ?> view,
      Supplier<List<ServerEvent>> now) {
    this.settings = settings;
    this.clock = clock;
    this.epoch = store.epoch();
    this.feed = new ReadingFeed(store.readings(), view, epoch);
    this.now = now;
    this.feeder = daemon(this::feed, "event-feed");
  }

  /** Starts the thread that reads committed readings; once, before the first client. */
  public void start() {
    feeder.start();
  }

  /** Clients connected now. Any thread. */
  public int clientCount() {
    return clients.size();
  }

  /**
   * To each client in place of a waiting event of the same key, as with live values. Any thread;
   * never waits for a client.
   */
  public void replace(ServerEvent event) {
    clients.keySet().forEach(client -> client.replace(event));
  }

  /**
   * To each client, after those that wait; the oldest is dropped where too many do. Any thread;
   * never waits for a client.
   */
  public void notice(ServerEvent event) {
    clients.keySet().forEach(client -> client.notice(event));
  }

  /** Tells that readings were committed; {@code then} goes out after them. */
  public void readingsCommitted(ServerEvent then) {
    afterReadings.put(then.key(), then);
    feedDue.release();
  }

  /** Ends what a session listens to. */
  public void endSession(String session) {
    clients.keySet().stream()
        .filter(client -> client.session().equals(session))
        .forEach(EventClient::close);
  }

  private void feed() {
    Tried looking =
        new Tried(LOG, "readings can't be read for the events; tried again", this::tellReadings);
    try {
      while (!closed) {
        awaitFeed();
        looking.run();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void tellReadings() {
    List<ServerEvent> then = List.copyOf(afterReadings.values());
    while (feed.refresh()) {
      clients.keySet().forEach(EventClient::readingsDue);
    }
    then.forEach(this::replace);
    then.forEach(event -> afterReadings.remove(event.key(), event));
  }

  private void awaitFeed() throws InterruptedException {
    feedDue.tryAcquire(FEED_CHECK_MILLIS, TimeUnit.MILLISECONDS);
    feedDue.drainPermits();
  }

  /** Answers a request for events; the connection stays open until either side ends it. */
  public void serve(Context ctx, Wanted wanted, EventId last) {
    boolean resumable = last.in(epoch) && resumable(last.reading());
    long cursor = resumable ? last.reading() : feed.lastId();
    EventClient client =
        new EventClient(EventAnswer.output(ctx), ctx.ip(), new Call(ctx).session(), wanted, cursor);
    ServerEvent hello = hello(cursor, last.reading() > 0 && !resumable);
    CompletableFuture<Void> done = new CompletableFuture<>();
    Thread sender = daemon(() -> send(client, hello, done), "event-sender");
    admit(new Running(client, sender, Connections.of(ctx)));
    try {
      EventAnswer.start(ctx);
      now.get().forEach(client::replace);
      ctx.future(() -> done);
      sender.start();
    } catch (RuntimeException | Error e) {
      clients.remove(client); // its sender, which would do it, does not run
      throw e;
    }
  }

  private boolean resumable(long lastEventId) {
    long behind = feed.newestId() - lastEventId;
    return lastEventId > 0 && behind >= 0 && behind <= LONGEST_REPLAY;
  }

  private synchronized void admit(Running running) {
    refuseWhenFull(running.client().address());
    clients.put(running.client(), running);
  }

  private void refuseWhenFull(String address) {
    if (closed) {
      throw new Refusal(503, "Stopping", "The service is stopping.");
    }
    long same = clients.keySet().stream().filter(c -> c.address().equals(address)).count();
    if (same >= settings.maxEventClientsPerAddress()) {
      throw tooMany(429, "Too many event clients from this address", same);
    }
    if (clients.size() >= settings.maxEventClients()) {
      throw tooMany(503, "Too many event clients", clients.size());
    }
  }

  private static Refusal tooMany(int status, String title, long count) {
    return new Refusal(
        status, title, count + " are listening; close a page.", Map.of("Retry-After", "10"));
  }

  private ServerEvent hello(long cursor, boolean reload) {
    return ServerEvent.of(
        "hello", "", () -> new Hello(Times.iso(micros()), cursor, epoch, HEARTBEAT_MILLIS, reload));
  }

  private long micros() {
    return Times.micros(Instant.now(clock));
  }

  private void send(EventClient client, ServerEvent hello, CompletableFuture<Void> done) {
    try {
      client.sendAll(feed, hello, this::heartbeat, HEARTBEAT_MILLIS);
    } catch (IOException e) {
      LOG.atDebug().addKeyValue("address", client.address()).log("event client is gone");
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (RuntimeException e) {
      LOG.atWarn().setCause(e).log("event client ended by a fault");
    } finally {
      clients.remove(client);
      done.complete(null);
    }
  }

  private ServerEvent heartbeat() {
    return ServerEvent.of("heartbeat", "", () -> new Heartbeat(Times.iso(micros()), feed.lastId()));
  }

  /** Ends every client, the stuck ones by cutting their connection. */
  @Override
  public void close() {
    synchronized (this) {
      closed = true;
    }
    feedDue.release();
    List<Running> running = List.copyOf(clients.values());
    running.forEach(each -> each.client().close());
    long deadline = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(CLOSE_MILLIS);
    for (Running each : running) {
      if (!ends(each.sender(), deadline)) {
        each.endPoint().close();
      }
    }
  }

  private static boolean ends(Thread thread, long deadline) {
    try {
      long millis = TimeUnit.NANOSECONDS.toMillis(deadline - System.nanoTime());
      thread.join(Math.max(1, millis));
      return !thread.isAlive();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static Thread daemon(Runnable work, String name) {
    Thread thread = new Thread(work, name);
    thread.setDaemon(true);
    return thread;
  }

  /**
   * First event of a connection; {@code reload} when what was missed must be fetched anew, as when
   * ids of another epoch mean other readings.
   */
  record Hello(String at, long lastReadingId, String epoch, long heartbeatMillis, boolean reload) {}

  /** Comes when nothing else did. */
  record Heartbeat(String at, long lastReadingId) {}
}
