package org.chordlog.station;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * Counts on their way from the thread of the length's link to the station's thread, in the order of
 * time; where nobody takes them, as while the indicator's own link is lost, the oldest are dropped.
 */
final class CountsInbox {
  private static final int MOST = 8192;

  private final Deque<Arrived> waiting = new ArrayDeque<>();
  private final LengthDelay delay;
  private volatile boolean known = true;

  /** A value read from a frame; or, without one, that the link broke off. */
  record Arrived(long nanos, @Nullable Long valueNm) {}

  CountsInbox(LengthDelay delay) {
    this.delay = delay;
  }

  LengthDelay delay() {
    return delay;
  }

  synchronized void counted(long nanos, long valueNm) {
    add(new Arrived(nanos, valueNm));
  }

  synchronized void brokeOff(long nanos) {
    add(new Arrived(nanos, null));
  }

  private void add(Arrived arrived) {
    if (waiting.size() == MOST) {
      waiting.removeFirst();
    }
    waiting.addLast(arrived);
  }

  /** The oldest one; null if none waits. */
  synchronized @Nullable Arrived poll() {
    return waiting.pollFirst();
  }

  synchronized void clear() {
    waiting.clear();
  }

  /** Told by the station's thread. */
  void known(boolean now) {
    known = now;
  }

  /** Whether depths have lengths now. Any thread. */
  boolean known() {
    return known;
  }
}
