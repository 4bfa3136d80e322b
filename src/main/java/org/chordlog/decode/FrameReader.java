package org.chordlog.decode;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Reads whole frames. */
interface FrameReader {
  /**
   * Reads the frame {@code bytes[from, to)} (markers and check included, line end not), and gives
   * what it says to the sink; null, or why it is refused, then nothing was given.
   */
  @Nullable String read(
      byte[] bytes, int from, int to, long monotonicNanos, Consumer<Decoded> sink);
}
