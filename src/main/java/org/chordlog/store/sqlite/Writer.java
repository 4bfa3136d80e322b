package org.chordlog.store.sqlite;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Stale;
import org.chordlog.store.DoneAlready;
import org.chordlog.store.PieceMove;
import org.chordlog.store.RequestKey;
import org.chordlog.store.StoreException;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Now;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.SqlAnsweredRequests;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that writes ("store-write"). Each commit takes what was queued during the one
 * before; readings that could not be committed are held and retried in order. A task at which the
 * program itself fails is given up, so that it does not hold up the others.
 *
 * <p>{@code queue} is filled by any thread; {@code held}, {@code walFilled} and the transactions
 * belong to the writer's thread. Futures complete on the thread "store-acknowledge", in the order
 * of the commits, so that no listener can delay a commit.
 */
final class Writer implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Writer.class);

  static final int CAPACITY = 20_000;
  private static final int BATCH = 1_000;
  private static final int CALL_SECONDS = 15;
  private static final int CLOSE_SECONDS = 10;

  private final BlockingQueue<WriteTask> queue = new ArrayBlockingQueue<>(CAPACITY);
  private final List<WriteTask> held = new ArrayList<>();
  private final Transactions transactions;
  private final Sealer sealer;
  private final long run;
  private final WriterMeter meter;
  private final StoreSettings settings;
  private final ExecutorService acknowledger =
      Executors.newSingleThreadExecutor(task -> Threads.daemon(task, "store-acknowledge"));
  private final Thread thread = Threads.daemon(this::loop, "store-write");
  private volatile int heldCount;
  private boolean walFilled;
  private volatile boolean stopping;
  private volatile boolean gaveUp;

  Writer(
      Transactions transactions,
      Sealer sealer,
      long run,
      WriterMeter meter,
      StoreSettings settings) {
    this.sealer = sealer;
    this.run = run;
    this.transactions = transactions;
    this.meter = meter;
    this.settings = settings;
  }

  void start() {
    thread.start();
  }

  int queued() {
    return queue.size() + heldCount;
  }

  CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles) {
    CompletableFuture<Reading> done = new CompletableFuture<>();
    if (!offered(append(reading, profiles, done))) {
      meter.readingDropped();
      done.completeExceptionally(new StoreException("not stored: " + why(), null));
    }
    return done;
  }

  /** The row is hashed by the caller's thread, so that the writer's has it ready. */
  private WriteTask append(
      Reading reading, List<PassedProfile> profiles, CompletableFuture<Reading> done) {
    byte[] hash = sealer.hash(reading, run);
    return new WriteTask.Append(reading, profiles, hash, RequestKey.current(), done);
  }

  CompletableFuture<List<Reading>> move(PieceMove move) {
    CompletableFuture<List<Reading>> done = new CompletableFuture<>();
    List<byte[]> hashes = move.there().stream().map(each -> sealer.hash(each, run)).toList();
    if (!offered(new WriteTask.Move(move, hashes, RequestKey.current(), done))) {
      done.completeExceptionally(new StoreException("not stored: " + why(), null));
    }
    return done;
  }

  <T> T call(Sql.Body<T> body) {
    return call(body, CALL_SECONDS);
  }

  /** Waits so long at most. */
  <T> T call(Sql.Body<T> body, int seconds) {
    CompletableFuture<T> done = new CompletableFuture<>();
    WriteTask task = new WriteTask.Call<>(SqlAnsweredRequests.keyed(body), done);
    if (!offered(task)) {
      throw new StoreException("not done: " + why(), null);
    }
    try {
      return done.orTimeout(seconds, TimeUnit.SECONDS).join();
    } catch (CompletionException e) {
      throw e.getCause() instanceof TimeoutException ? late(task, seconds) : unwrapped(e);
    }
  }

  /** What still waits is taken back; what was begun may yet be committed. */
  private StoreException late(WriteTask task, int seconds) {
    String message =
        queue.remove(task)
            ? "not done: the store did not come to it within %d s: try again"
            : "the store did not finish within %d s, and the change may still be kept: look whether"
                + " it is there before you try again";
    return new StoreException(message.formatted(seconds), null);
  }

  /** Whether somebody completes it: the writer, or who gives up what was queued too late for it. */
  private boolean offered(WriteTask task) {
    return !stopping && queue.offer(task) && !(gaveUp && queue.remove(task));
  }

  private String why() {
    String fault = meter.fault();
    return stopping ? "the store is closed" : fault.isEmpty() ? "the queue is full" : fault;
  }

  private static RuntimeException unwrapped(CompletionException e) {
    Throwable cause = e.getCause();
    if (cause instanceof BadInput || cause instanceof Stale || cause instanceof DoneAlready) {
      return (RuntimeException) cause;
    }
    String message = cause == null ? e.toString() : String.valueOf(cause.getMessage());
    return new StoreException(message, cause);
  }

  private void loop() {
    while (!stopping) {
      gather();
      if (!commit()) {
        rest(settings.retryMillis());
      }
      emptyWalWhenIdle();
    }
    finish();
  }

  /** Commits what is queued; what still fails is given up. */
  private void finish() {
    do {
      gather();
    } while (commit(true) && queued() > 0);
    giveUp();
  }

  private void emptyWalWhenIdle() {
    long idle = (Now.micros() - meter.lastCommitMicros()) / 1_000;
    if (walFilled && idle >= settings.idleMillis()) {
      walFilled = !transactions.emptyWal();
    }
  }

  private void giveUp() {
    gaveUp = true;
    queue.drainTo(held);
    StoreException fault = new StoreException("not stored: " + meter.fault(), null);
    for (WriteTask work : held) {
      if (work instanceof WriteTask.Append) {
        meter.readingDropped();
      }
      work.done().completeExceptionally(fault);
    }
    held.clear();
  }

  private void rest(long millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private boolean commit() {
    return commit(false);
  }

  private boolean commit(boolean last) {
    try {
      return committed(last);
    } finally {
      heldCount = held.size();
    }
  }

  private boolean committed(boolean last) {
    List<Runnable> acknowledgements = new ArrayList<>(held.size());
    try {
      walFilled |= transactions.commit(held, acknowledgements, last);
    } catch (SQLException e) {
      failed(Failures.sentence(e), e);
      return false;
    } catch (RuntimeException | Error e) {
      return fellOut(acknowledgements.size(), e);
    }
    held.clear();
    acknowledge(() -> acknowledgements.forEach(Runnable::run));
    return true;
  }

  /** What was committed after the end of the other thread is told by this one. */
  private void acknowledge(Runnable telling) {
    try {
      acknowledger.execute(telling);
    } catch (RejectedExecutionException e) {
      telling.run();
    }
  }

  /** Takes what is queued; waits up to one tick when there is nothing, unless this is the end. */
  private void gather() {
    boolean mayWait = held.isEmpty() && !stopping;
    try {
      WriteTask first = mayWait ? queue.poll(settings.tickMillis(), TimeUnit.MILLISECONDS) : null;
      if (first != null) {
        held.add(first);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    queue.drainTo(held, Math.max(0, BATCH - held.size()));
  }

  /** Whether the others of the batch can be committed at once, without the task that failed. */
  private boolean fellOut(int number, Throwable e) {
    String sentence = "the program has a fault: " + e;
    if (number >= held.size()) {
      failed(sentence, e);
      return false;
    }
    LOG.atError().setCause(e).log("a task of the store failed");
    WriteTask task = held.remove(number);
    if (task instanceof WriteTask.Append) {
      meter.readingDropped();
    }
    StoreException fault = new StoreException("not stored: " + sentence, e);
    task.done().completeExceptionally(fault);
    failCalls(fault);
    return true;
  }

  private void failed(String sentence, Throwable e) {
    meter.failed(sentence, e);
    failCalls(new StoreException("not stored: " + sentence, e));
  }

  private void failCalls(StoreException fault) {
    held.removeIf(
        work -> work instanceof WriteTask.Call && work.done().completeExceptionally(fault));
  }

  /** Queues a task that does nothing, which ends the wait for tasks. */
  void wake() {
    if (!queue.isEmpty()) {
      return;
    }
    var unused = queue.offer(new WriteTask.Call<>(connection -> true, new CompletableFuture<>()));
  }

  @Override
  public void close() {
    stopping = true;
    wake();
    try {
      thread.join(TimeUnit.SECONDS.toMillis(CLOSE_SECONDS));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    Threads.end(acknowledger, CLOSE_SECONDS);
  }
}
