package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** Frames that end with a terminator. Empty ones are passed over. */
final class LineFramer implements Framer {
  private final byte[] terminator;
  private final int most;
  private final byte[] held;
  private int count;
  private boolean skipping;

  /** No terminator: CR and LF both end a line. */
  LineFramer(Framing framing) {
    terminator = Bytes.of(framing.terminator());
    most = framing.maxLength();
    held = new byte[most + Math.max(1, terminator.length)];
  }

  @Override
  public void feed(byte[] bytes, int from, int to, long nanos, Sink sink) {
    int start = from;
    for (int at = from; at < to; at++) {
      if (ends(bytes, start, at)) {
        close(bytes, start, at + 1, nanos, sink);
        start = at + 1;
      }
    }
    hold(bytes, start, to, nanos, sink);
  }

  private boolean ends(byte[] bytes, int start, int at) {
    byte b = bytes[at];
    if (terminator.length == 0) {
      return b == '\n' || b == '\r';
    }
    return b == terminator[terminator.length - 1]
        && (terminator.length == 1 || tailFits(bytes, start, at));
  }

  private boolean tailFits(byte[] bytes, int start, int at) {
    for (int back = 1; back < terminator.length; back++) {
      int index = at - back;
      int heldIndex = count - (start - index);
      if (index < start && heldIndex < 0) {
        return false;
      }
      byte b = index >= start ? bytes[index] : held[heldIndex];
      if (b != terminator[terminator.length - 1 - back]) {
        return false;
      }
    }
    return true;
  }

  private void close(byte[] bytes, int start, int end, long nanos, Sink sink) {
    int cut = Math.max(1, terminator.length);
    if (count == 0) {
      whole(bytes, start, end - cut, nanos, sink);
    } else {
      hold(bytes, start, end, nanos, sink);
      whole(held, 0, count - cut, nanos, sink);
    }
    count = 0;
    skipping = false;
  }

  private void whole(byte[] bytes, int from, int to, long nanos, Sink sink) {
    if (skipping || to <= from) {
      return;
    }
    if (to - from > most) {
      sink.damaged(bytes, from, from + most, nanos, tooLong());
      return;
    }
    @Nullable String reason = sink.frame(bytes, from, to, nanos);
    if (reason != null) {
      sink.damaged(bytes, from, to, nanos, reason);
    }
  }

  private void hold(byte[] bytes, int from, int to, long nanos, Sink sink) {
    for (int at = from; at < to; at++) {
      if (count == held.length) {
        overflow(nanos, sink);
      }
      held[count++] = bytes[at];
    }
  }

  /** Gives up the frame; keeps what may be the beginning of its terminator. */
  private void overflow(long nanos, Sink sink) {
    if (!skipping) {
      sink.damaged(held, 0, most, nanos, tooLong());
    }
    skipping = true;
    int keep = Math.max(0, terminator.length - 1);
    System.arraycopy(held, count - keep, held, 0, keep);
    count = keep;
  }

  private String tooLong() {
    return "longer than " + most + " bytes";
  }

  @Override
  public void pause(long lastNanos, Sink sink) {
    if (!skipping) {
      sink.damaged(held, 0, Math.min(count, most), lastNanos, "ended by a pause");
    }
    reset();
  }

  @Override
  public void reset() {
    count = 0;
    skipping = false;
  }

  @Override
  public boolean holds() {
    return count > 0 || skipping;
  }
}
