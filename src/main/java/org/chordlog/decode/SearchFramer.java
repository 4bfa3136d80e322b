package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/**
 * Frames that are searched: after a refused one it looks for the next from its second byte on, so
 * that damage costs the damaged frame alone.
 */
final class SearchFramer implements Framer {
  private final Finder finder;
  private final int most;
  private final byte[] buffer;

  /** Bytes {@code [base, at)} belong to no frame, {@code [at, count)} may. */
  private int base;

  private int at;
  private int count;
  private boolean lost;
  private @Nullable String reason;

  SearchFramer(Finder finder, int most) {
    this.finder = finder;
    this.most = most;
    buffer = new byte[4 * most + 1024];
  }

  @Override
  public void feed(byte[] bytes, int from, int to, long nanos, Sink sink) {
    int next = from;
    while (next < to) {
      int taken = Math.min(to - next, buffer.length - count);
      System.arraycopy(bytes, next, buffer, count, taken);
      count += taken;
      next += taken;
      search(nanos, sink);
      compact();
    }
  }

  private void search(long nanos, Sink sink) {
    boolean more = true;
    while (more) {
      at = lost ? count : finder.start(buffer, at, count);
      int end = at == count ? Finder.WAIT : finder.end(buffer, at, count);
      more = end != Finder.WAIT;
      if (more) {
        take(end, nanos, sink);
      }
      spill(nanos, sink);
    }
  }

  private void take(int end, long nanos, Sink sink) {
    String refusal = end == Finder.NONE ? "no whole frame" : sink.frame(buffer, at, end, nanos);
    if (refusal != null) {
      reason = reason == null ? refusal : reason;
      lost = finder.needsPause();
      at = lost ? count : at + 1;
      return;
    }
    flush(nanos, sink);
    base = end;
    at = end;
  }

  /** Gives up what no frame can begin in, in pieces of the longest frame. */
  private void spill(long nanos, Sink sink) {
    while (at - base >= most) {
      flush(base + most, nanos, sink);
      base += most;
    }
  }

  private void flush(long nanos, Sink sink) {
    flush(at, nanos, sink);
    reason = null;
  }

  private void flush(int end, long nanos, Sink sink) {
    int from = base;
    while (from < end && finder.passes(buffer[from])) {
      from++;
    }
    if (from < end) {
      sink.damaged(buffer, from, end, nanos, reason == null ? "outside any frame" : reason);
    }
  }

  private void compact() {
    System.arraycopy(buffer, base, buffer, 0, count - base);
    at -= base;
    count -= base;
    base = 0;
  }

  @Override
  public void pause(long lastNanos, Sink sink) {
    at = count;
    reason = reason == null && count > base ? "ended by a pause" : reason;
    spill(lastNanos, sink);
    flush(lastNanos, sink);
    reset();
  }

  @Override
  public void reset() {
    base = 0;
    at = 0;
    count = 0;
    lost = false;
    reason = null;
  }

  @Override
  public boolean holds() {
    return count > 0 || lost;
  }
}
