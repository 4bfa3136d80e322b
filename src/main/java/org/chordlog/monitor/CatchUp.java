package org.chordlog.monitor;

import java.util.List;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Reading;
import org.chordlog.stats.math.Checkpointed;
import org.jspecify.annotations.Nullable;

/**
 * Statistics brought up to what the store holds before each look, a bounded number of readings at a
 * time. A change that lies before readings already taken in winds back to a checkpoint and goes
 * over them again, so that the digits are those of a recomputation.
 */
abstract class CatchUp<S extends Checkpointed> {
  /** Most readings taken in by one look; the rest follows in the background. */
  static final int READINGS_A_LOOK = 5_000;

  private static final int PAGE = 1_000;

  /** Fair, so that whoever looks has its turn while the background goes over many readings. */
  private final ReentrantLock lock = new ReentrantLock(true);

  /** Whether the background is at it: then a look takes in a page only, and shows what is ready. */
  private volatile boolean inBackground;

  private @Nullable Running<S> found;

  /** Readings and changes that are in no checkpoint. */
  private long unkept;

  abstract CheckpointLadder<S> ladder();

  abstract List<JobEvent> events(long afterId);

  abstract List<Exclusion> exclusions(long afterId);

  abstract List<Reading> readings(long afterId, int limit);

  /** Readings that the store holds. */
  abstract long kept();

  /** Makes ready for a look: true if all has to be gone over again. */
  abstract boolean prepare();

  abstract void note(S statistics, Exclusion exclusion);

  abstract void take(S statistics, Reading reading);

  <T> T read(Function<S, T> view) {
    return locked(
        () -> {
          long unused = bringUp(aLook());
          return view.apply(running().statistics());
        });
  }

  private int aLook() {
    return inBackground ? PAGE : READINGS_A_LOOK;
  }

  void leaveToBackground() {
    inBackground = true;
  }

  /** Takes in a page of what is new; how many readings are still to come: call it until none. */
  long catchUp() {
    return locked(
        () -> {
          inBackground = false;
          long behind = bringUp(PAGE);
          inBackground = behind > 0;
          return behind;
        });
  }

  /** Looks at how far it is, and how many readings are still to come. */
  <T> T look(BiFunction<Running<S>, Long, T> view) {
    return locked(
        () -> {
          long behind = bringUp(aLook());
          return view.apply(running(), behind);
        });
  }

  /** So that the next start goes on from here. */
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

  /** What broke off midway is dropped, and begun again from a checkpoint by the next look. */
  private long bringUp(int most) {
    boolean whole = false;
    try {
      long behind = goOver(most);
      whole = true;
      return behind;
    } finally {
      if (!whole) {
        found = null;
      }
    }
  }

  private long goOver(int most) {
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

  /** What took many looks is kept at once: a kill does not cost them again. */
  private long arrived(Running<S> running) {
    running.happenedUpTo(Long.MAX_VALUE);
    if (unkept >= READINGS_A_LOOK) {
      boolean unused = keepUnkept();
    }
    return 0;
  }

  private void take(Running<S> running, Reading reading, boolean more) {
    running.happenedUpTo(reading.id() - 1);
    take(running.statistics(), reading);
    running.wentOver(reading.id());
    unkept = ladder().keepIfDue(running, more) ? 0 : unkept + 1;
  }

  private Running<S> withChanges() {
    Running<S> running = running();
    List<JobEvent> events = events(running.eventId());
    List<Exclusion> exclusions = exclusions(running.exclusionId());
    long before = earliest(events, exclusions);
    if (before < running.lastReadingId()) {
      running = ladder().back(before);
      found = running;
      events = events(running.eventId());
      exclusions = exclusions(running.exclusionId());
    }
    S statistics = running.statistics();
    exclusions.forEach(each -> note(statistics, each));
    running.note(events, exclusions);
    unkept += events.size() + exclusions.size();
    return running;
  }

  /** The last reading that the changes leave as it was. */
  private static long earliest(List<JobEvent> events, List<Exclusion> exclusions) {
    long exclusion =
        exclusions.stream().mapToLong(each -> each.readingId() - 1).min().orElse(Long.MAX_VALUE);
    return Math.min(PendingEvents.earliest(events), exclusion);
  }
}
