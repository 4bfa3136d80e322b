package org.chordlog.profile;

import java.util.ArrayDeque;
import java.util.Deque;
import org.chordlog.measure.Check;

/**
 * Finds the length for each depth where both come over links of their own: by linear interpolation
 * between the lengths before and after the depth's time less the delay, never beyond them, nor
 * across 2 s without a length. A depth whose length has not come yet waits, 2 s at most. One
 * thread.
 */
public final class LengthJoin<T> {
  private static final int KEPT = 4096;
  private static final long MOST_WAIT_NANOS = 2_000_000_000L;
  private static final double MOST_DELAY_MS = 200;

  private final long delayNanos;
  private final Sink<T> sink;
  private final long[] nanos = new long[KEPT];
  private final long[] lengths = new long[KEPT];
  private final Deque<Waiting<T>> waiting = new ArrayDeque<>();
  private long count;

  private record Waiting<T>(long nanos, T depth) {}

  /** Takes what was joined. */
  public interface Sink<T> {
    /** A depth with the length at its time. */
    void placed(T depth, long lengthNm);

    /** A depth that had no length in time. */
    void lost(T depth);
  }

  /** The depth comes later than the length it belongs to by the delay. */
  public LengthJoin(double delayMs, Sink<T> sink) {
    delayNanos = Math.round(1e6 * checkedDelayMs("delayMs", delayMs));
    this.sink = sink;
  }

  /** The same delay; {@link org.chordlog.measure.BadInput} beyond 200 ms either way. */
  public static double checkedDelayMs(String field, double delayMs) {
    return Check.within(field, delayMs, -MOST_DELAY_MS, MOST_DELAY_MS);
  }

  /**
   * Takes in a length; depths that waited for it are placed. Of lengths handed over at one time the
   * last one counts.
   */
  public void length(long atNanos, long lengthNm) {
    if (count > 0 && atNanos <= nanos[at(count - 1)]) {
      lengths[at(count - 1)] = lengthNm;
      return;
    }
    nanos[at(count)] = atNanos;
    lengths[at(count)] = lengthNm;
    count++;
    release();
  }

  /** Takes in a depth, which waits for the next length; before the first one it is passed over. */
  public void depth(T depth, long atNanos) {
    waiting.addLast(new Waiting<>(atNanos, depth));
    release();
    if (!waiting.isEmpty() && atNanos - waiting.getFirst().nanos() > MOST_WAIT_NANOS) {
      loseAll();
    }
  }

  /** No length is to come any more: what waits for one is lost. */
  public void loseAll() {
    while (!waiting.isEmpty()) {
      sink.lost(waiting.removeFirst().depth());
    }
  }

  private void release() {
    while (!waiting.isEmpty() && count > 0) {
      Waiting<T> next = waiting.getFirst();
      long when = next.nanos() - delayNanos;
      if (when > nanos[at(count - 1)]) {
        return;
      }
      waiting.removeFirst();
      place(next.depth(), when);
    }
  }

  private void place(T depth, long when) {
    long oldest = Math.max(0, count - KEPT);
    long after = count - 1;
    while (after > oldest && nanos[at(after - 1)] >= when) {
      after--;
    }
    if (nanos[at(after)] == when) {
      sink.placed(depth, lengths[at(after)]);
    } else if (after > oldest) {
      between(depth, after, when);
    }
  }

  private void between(T depth, long after, long when) {
    int b = at(after);
    int a = at(after - 1);
    long apart = nanos[b] - nanos[a];
    if (apart > MOST_WAIT_NANOS) {
      sink.lost(depth);
      return;
    }
    double share = (double) (when - nanos[a]) / apart;
    sink.placed(depth, lengths[a] + Math.round(share * (lengths[b] - lengths[a])));
  }

  private static int at(long number) {
    return (int) (number % KEPT);
  }
}
