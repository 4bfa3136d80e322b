package org.chordlog.monitor;

import java.util.List;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.math.Checkpointed;
import org.jspecify.annotations.Nullable;

/**
 * Statistics that catch up with the store before each read, a bounded number of readings at a time.
 * A change that concerns readings already included restores an older checkpoint and processes them
 * again, so that the digits are those of a recomputation. All state is guarded by one fair lock.
 */
abstract class CatchUp<S extends Checkpointed> {
  /** Most readings processed by one read; the background thread does the rest. */
  static final int READINGS_A_READ = 5_000;

  private static final int PAGE = 1_000;

  /** Fair, so that a reader gets its turn while the background thread processes many readings. */
  private final ReentrantLock lock = new ReentrantLock(true);

  /** True while the background thread is catching up; a read then processes only one page. */
  private volatile boolean inBackground;

  private @Nullable Running<S> found;

  /** Readings and changes since the newest checkpoint. */
  private long unkept;

  abstract CheckpointLadder<S> ladder();

  abstract List<JobEvent> events(long afterId);

  abstract List<Exclusion> exclusions(long afterId);

  /** All of them. */
  abstract List<EventWithdrawal> withdrawals();

  abstract List<Reading> readings(long afterId, int limit);

  /** Number of readings in the store. */
  abstract long kept();

  /** Called before catching up: true if everything must be reprocessed. */
  abstract boolean prepare();

  abstract void note(S statistics, Exclusion exclusion);

  abstract void take(S statistics, Reading reading);

  /** Called before each read, with what the store holds beside readings and changes. */
  void ready(S statistics) {}

  <T> T read(Function<S, T> view) {
    return look((running, behind) -> view.apply(running.statistics()));
  }

  private int pageLimit() {
    return inBackground ? PAGE : READINGS_A_READ;
  }

  void leaveToBackground() {
    inBackground = true;
  }

  /** Processes one page of new readings and returns how many remain: call it until none do. */
  long catchUp() {
    return locked(
        () -> {
          inBackground = false;
          long behind = advance(PAGE);
          inBackground = behind > 0;
          return behind;
        });
  }

  /** Reads the statistics together with the number of readings that they do not include yet. */
  <T> T look(BiFunction<Running<S>, Long, T> view) {
    return locked(
        () -> {
          long behind = advance(pageLimit());
          ready(running().statistics());
          return view.apply(running(), behind);
        });
  }

  /** Stores a checkpoint, so that the next start continues from here. */
  void keep() {
    boolean unused = locked(this::keepUnkept);
  }

  private boolean keepUnkept() {
    boolean due = unkept > 0;
    if (due) {
      ladder().keepNow(running());
      unkept = 0;
    }
    return due;
  }

  private Running<S> running() {
    Running<S> known = found;
    if (known == null) {
      known = ladder().newest();
      found = known;
    }
    return known;
  }

  private <T> T locked(Supplier<T> work) {
    lock.lock();
    try {
      return work.get();
    } finally {
      lock.unlock();
    }
  }

  /** After an exception the half-updated state is dropped; the next read restores a checkpoint. */
  private long advance(int most) {
    boolean whole = false;
    try {
      long behind = process(most);
      whole = true;
      return behind;
    } finally {
      if (!whole) {
        found = null;
      }
    }
  }

  private long process(int most) {
    if (prepare()) {
      found = ladder().fresh();
    }
    Running<S> running = withChanges();
    int left = most;
    List<Reading> page;
    do {
      page = readings(running.lastReadingId(), Math.min(PAGE, left));
      boolean more = page.size() == PAGE;
      page.forEach(reading -> take(running, reading, more));
      left -= page.size();
    } while (left > 0 && page.size() == PAGE);
    return left == 0 ? Math.max(0, kept() - running.count()) : arrived(running);
  }

  /** Work of many pages is stored at once, so that a kill does not repeat it. */
  private long arrived(Running<S> running) {
    running.happenedUpTo(Long.MAX_VALUE);
    if (unkept >= READINGS_A_READ) {
      boolean unused = keepUnkept();
    }
    return 0;
  }

  private void take(Running<S> running, Reading reading, boolean more) {
    running.happenedUpTo(reading.id() - 1);
    take(running.statistics(), reading);
    running.processed(reading.id());
    unkept = ladder().keepIfDue(running, more) ? 0 : unkept + 1;
  }

  private Running<S> withChanges() {
    Running<S> running = running();
    Changes changes = changesAfter(running);
    long before = changes.earliest();
    if (before < running.lastReadingId()) {
      running = ladder().back(before);
      found = running;
      changes = changesAfter(running);
    }
    S statistics = running.statistics();
    changes.exclusions().forEach(each -> note(statistics, each));
    running.note(changes);
    unkept += changes.count();
    return running;
  }

  /**
   * What was recorded since then. A withdrawal concerns the readings after its event, and the event
   * is left out from then on.
   */
  private Changes changesAfter(Running<S> running) {
    List<EventWithdrawal> all = withdrawals();
    List<EventWithdrawal> since =
        all.stream().filter(each -> each.id() > running.withdrawalId()).toList();
    List<JobEvent> counting = EventWithdrawal.counting(events(running.eventId()), all);
    return new Changes(counting, exclusions(running.exclusionId()), since, concerned(since));
  }

  private List<JobEvent> concerned(List<EventWithdrawal> withdrawals) {
    if (withdrawals.isEmpty()) {
      return List.of();
    }
    Set<Long> ids = EventWithdrawal.events(withdrawals);
    return events(0).stream().filter(each -> ids.contains(each.id())).toList();
  }
}
