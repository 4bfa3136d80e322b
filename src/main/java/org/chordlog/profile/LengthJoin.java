package org.chordlog.profile;

import java.util.ArrayDeque;
import java.util.Deque;
import org.chordlog.measure.Check;

/**
 * Finds the length for each depth where both come over links of their own: by linear interpolation
 * between the lengths before and after the depth's time less the delay, never beyond them. A depth
 * whose length has not come yet waits, 2 s at most. One thread.
 */
public final class LengthJoin {
  private static final int KEPT = 64;
  private static final long MOST_WAIT_NANOS = 2_000_000_000L;

  private final long delayNanos;
  private final long[] nanos = new long[KEPT];
  private final long[] lengths = new long[KEPT];
  private final Deque<Waiting> waiting = new ArrayDeque<>();
  private long count;

  private record Waiting(long sequence, long nanos, long depthNm) {}

  /** Takes what was joined. */
  public interface Sink {
    /** A depth with the length at its time. */
    void placed(long sequence, long nanos, long lengthNm, long depthNm);

    /** Depths from here on had no length in time. */
    void lost(long nanos);
  }

  /** The depth comes later than the length it belongs to by the delay. */
  public LengthJoin(double delayMs) {
    delayNanos = Math.round(1e6 * Check.within("delayMs", delayMs, -200, 200));
  }

  /** Takes in a length; depths that waited for it are placed. */
  public void length(long atNanos, long lengthNm, Sink sink) {
    if (count > 0 && atNanos <= nanos[at(count - 1)]) {
      return;
    }
    nanos[at(count)] = atNanos;
    lengths[at(count)] = lengthNm;
    count++;
    release(sink);
  }

  /** Takes in a depth, which waits for the next length. */
  public void depth(long sequence, long atNanos, long depthNm, Sink sink) {
    waiting.addLast(new Waiting(sequence, atNanos, depthNm));
    release(sink);
    if (!waiting.isEmpty() && atNanos - waiting.getFirst().nanos() > MOST_WAIT_NANOS) {
      sink.lost(waiting.getFirst().nanos());
      waiting.clear();
    }
  }

  private void release(Sink sink) {
    while (!waiting.isEmpty() && count > 0) {
      Waiting next = waiting.getFirst();
      long when = next.nanos() - delayNanos;
      if (when > nanos[at(count - 1)]) {
        return;
      }
      waiting.removeFirst();
      place(next, when, sink);
    }
  }

  private void place(Waiting depth, long when, Sink sink) {
    long oldest = Math.max(0, count - KEPT);
    long after = count - 1;
    while (after > oldest && nanos[at(after - 1)] >= when) {
      after--;
    }
    if (after == oldest && nanos[at(after)] != when) {
      sink.lost(depth.nanos());
      return;
    }
    sink.placed(depth.sequence(), depth.nanos(), between(after, when), depth.depthNm());
  }

  private long between(long after, long when) {
    int b = at(after);
    if (nanos[b] == when) {
      return lengths[b];
    }
    int a = at(after - 1);
    double share = (double) (when - nanos[a]) / (nanos[b] - nanos[a]);
    return lengths[a] + Math.round(share * (lengths[b] - lengths[a]));
  }

  private static int at(long number) {
    return (int) (number % KEPT);
  }
}
