package org.chordlog.decode;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * Turns a stream of bytes, cut anywhere, into values; pure but for what it holds of a half frame.
 */
public interface Decoder {
  /** Feeds {@code bytes[from, to)} that arrived at that time. */
  void feed(byte[] bytes, int from, int to, long monotonicNanos, Consumer<Decoded> sink);

  /** Tells that nothing came until that time, which ends a frame that is closed by an idle gap. */
  void idle(long monotonicNanos, Consumer<Decoded> sink);

  /** Forgets the half frame, after a link was lost; what is known of the indicator stays. */
  void reset();

  /** What was done so far; may be asked by another thread than the one that feeds. */
  DecodeCounts counts();

  /** What to send at that time to a polled indicator, or null. */
  default byte @Nullable [] request(long monotonicNanos) {
    return null;
  }
}
