package org.chordlog.notify;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.chordlog.store.StoreException;
import org.chordlog.timer.TimedWork;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Raises alerts and ends them, from what is committed and what stations say of their links, in
 * rounds on the thread "alert-watch". What it must know after a restart is in the store. For a
 * while after the start nothing is raised or ended, so that links can open; alerts that are open
 * stay so. Any thread may read {@link #counts}.
 */
public final class AlertWatch implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(AlertWatch.class);
  private static final int CLOSE_SECONDS = 5;
  private static final long MICROS = 1_000_000L;

  /** A round each so often, and how long nothing is raised after the start. */
  public record Times(Duration round, Duration quiet) {
    public static final Times USUAL = new Times(Duration.ofSeconds(5), Duration.ofMinutes(5));

    /** For a demo, whose links are its own. */
    public static final Times AT_ONCE = new Times(Duration.ofSeconds(1), Duration.ZERO);
  }

  private final AlertBook book;
  private final List<Round> all;
  private final BooleanSupplier turn;
  private final LongSupplier wallMicros;
  private final Times times;
  private final long startedMicros;
  private final ScheduledExecutorService rounds = TimedWork.timer("alert-watch");
  private volatile long lastRoundMicros;

  /** Of the thread. */
  private long quietSinceMicros;

  /** Of the thread. */
  private boolean quiet = true;

  /** {@code wallMicros}: the clock, UTC microseconds. */
  public AlertWatch(Watched watched, LongSupplier wallMicros, Times times) {
    this(new AlertBook(watched.store().alerts()), () -> true, wallMicros, times);
    all.add(new ServiceRound(watched, book));
    all.add(new StationRound(watched, book));
    all.add(new MachineRound(watched.store(), watched.monitor(), book));
  }

  /** Over the workshop computers of a plant, whose alerts are the plant's own. */
  public AlertWatch(WatchedPlant watched, LongSupplier wallMicros, Times times) {
    this(new AlertBook(watched.alerts()), watched.turn(), wallMicros, times);
    all.add(new EdgeRound(watched, book, times.quiet()));
  }

  private AlertWatch(AlertBook book, BooleanSupplier turn, LongSupplier wallMicros, Times times) {
    this.book = book;
    this.turn = turn;
    this.wallMicros = wallMicros;
    this.times = times;
    all = new ArrayList<>();
    startedMicros = wallMicros.getAsLong();
    quietSinceMicros = startedMicros;
  }

  /**
   * Starts the thread that looks, once. A round that fails is logged, and the next one tries again.
   */
  public void start() {
    long millis = times.round().toMillis();
    var unused =
        rounds.scheduleWithFixedDelay(
            TimedWork.of(this::attempt), millis, millis, TimeUnit.MILLISECONDS);
  }

  private void attempt() {
    try {
      round();
    } catch (StoreException e) {
      LOG.atDebug().setCause(e).log("no round of alerts: the store does not answer");
    } catch (RuntimeException e) {
      LOG.atError().setCause(e).log("a round of alerts failed");
    }
  }

  /** Looks at everything once; what fails in one part is tried again in the next round. */
  void round() {
    long now = wallMicros.getAsLong();
    if (turn.getAsBoolean()) {
      book.shelvesEnd(now);
      if (!isQuiet(now)) {
        all.forEach(each -> each.run(now));
      }
    }
    lastRoundMicros = now;
  }

  /** Once over it stays so; a clock that is set back meanwhile begins it anew, not longer. */
  private boolean isQuiet(long nowMicros) {
    quietSinceMicros = Math.min(quietSinceMicros, nowMicros);
    quiet = quiet && nowMicros - quietSinceMicros < times.quiet().toMillis() * 1_000;
    return quiet;
  }

  /** When it began to look. */
  public Instant since() {
    return Instant.EPOCH.plus(startedMicros, ChronoUnit.MICROS);
  }

  /** How many alerts there are in each state, and whether the watch goes on; asks the store. */
  public AlertCounts counts() {
    long silent = (wallMicros.getAsLong() - Math.max(startedMicros, lastRoundMicros)) / MICROS;
    long bound = Math.max(60, 12 * times.round().toSeconds());
    return AlertCounts.of(book.alerts(), lastRoundMicros, silent <= bound);
  }

  @Override
  public void close() {
    rounds.shutdownNow();
    try {
      boolean unused = rounds.awaitTermination(CLOSE_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
