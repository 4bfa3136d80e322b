package org.chordlog.decode;

import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Reads whole frames. */
interface FrameReader {
  /** Gives what the frame says to the sink; null, or why it is refused, then nothing was given. */
  @Nullable String read(Frame frame, Consumer<Decoded> sink);
}
