package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** When to send a request: at once, then at the interval, but not while an answer is due. */
final class Polls {
  private final byte @Nullable [] request;
  private final long intervalNanos;
  private final long timeoutNanos;
  private boolean sent;
  private boolean waiting;
  private long lastNanos;

  Polls(byte @Nullable [] request, int intervalMs, int timeoutMs) {
    this.request = request;
    intervalNanos = intervalMs * 1_000_000L;
    timeoutNanos = timeoutMs * 1_000_000L;
  }

  static Polls of(@Nullable Polling polling) {
    return polling == null
        ? new Polls(null, 0, 0)
        : new Polls(Bytes.of(polling.request()), polling.intervalMs(), polling.intervalMs());
  }

  byte @Nullable [] request(long nanos, DecodeLog log) {
    long since = nanos - lastNanos;
    if (request == null
        || (sent && since < (waiting ? Math.max(timeoutNanos, intervalNanos) : intervalNanos))) {
      return null;
    }
    if (waiting) {
      log.addUnanswered();
    }
    sent = true;
    waiting = true;
    lastNanos = nanos;
    return request.clone();
  }

  void answered() {
    waiting = false;
  }

  void reset() {
    sent = false;
    waiting = false;
  }
}
