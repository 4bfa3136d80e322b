package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/**
 * Cuts a stream into frames. What it gives depends on the bytes alone, not on where they are cut.
 */
interface Framer {
  void feed(byte[] bytes, int from, int to, long monotonicNanos, Sink sink);

  /** Nothing came for the profile's pause after {@code lastNanos}: ends or drops what is held. */
  void pause(long lastNanos, Sink sink);

  void reset();

  /** Whether half a frame is held. */
  boolean holds();

  /** Takes what was cut. */
  interface Sink {
    /** Null, or why this is no frame. */
    @Nullable String frame(byte[] bytes, int from, int to, long monotonicNanos);

    void damaged(byte[] bytes, int from, int to, long monotonicNanos, String reason);
  }
}
