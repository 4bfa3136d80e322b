package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** Frames that are ended by a pause. */
final class PauseFramer implements Framer {
  private final byte[] held;
  private int count;
  private boolean tooLong;

  PauseFramer(int most) {
    held = new byte[most];
  }

  @Override
  public void feed(byte[] bytes, int from, int to, long nanos, Sink sink) {
    int taken = Math.min(to - from, held.length - count);
    System.arraycopy(bytes, from, held, count, taken);
    count += taken;
    tooLong |= taken < to - from;
  }

  @Override
  public void pause(long lastNanos, Sink sink) {
    if (count > 0) {
      String reason =
          tooLong ? "longer than " + held.length + " bytes" : sink.frame(held, 0, count, lastNanos);
      refuse(reason, lastNanos, sink);
    }
    reset();
  }

  private void refuse(@Nullable String reason, long lastNanos, Sink sink) {
    if (reason != null) {
      sink.damaged(held, 0, count, lastNanos, reason);
    }
  }

  @Override
  public void reset() {
    count = 0;
    tooLong = false;
  }

  @Override
  public boolean holds() {
    return count > 0;
  }
}
