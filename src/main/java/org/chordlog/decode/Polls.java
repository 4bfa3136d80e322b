package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** When to send a request: at once, then at the interval. */
final class Polls {
  private final byte @Nullable [] request;
  private final long intervalNanos;
  private boolean sent;
  private long lastNanos;

  Polls(@Nullable Polling polling) {
    request = polling == null ? null : Bytes.of(polling.request());
    intervalNanos = polling == null ? 0 : polling.intervalMs() * 1_000_000L;
  }

  byte @Nullable [] request(long nanos) {
    if (request == null || (sent && nanos - lastNanos < intervalNanos)) {
      return null;
    }
    sent = true;
    lastNanos = nanos;
    return request.clone();
  }

  void reset() {
    sent = false;
  }
}
