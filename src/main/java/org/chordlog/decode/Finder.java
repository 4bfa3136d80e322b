package org.chordlog.decode;

/** Finds frames in a buffer; decides by the bytes alone. */
interface Finder {
  /** More bytes are needed to tell. */
  int WAIT = -1;

  /** No frame begins there. */
  int NONE = -2;

  /** The first place in {@code [from, to)} where a frame may begin; {@code to} for none. */
  int start(byte[] bytes, int from, int to);

  /** Where the frame that begins at {@code start} ends, or {@link #WAIT} or {@link #NONE}. */
  int end(byte[] bytes, int start, int to);

  /** Whether, after a refused frame, only a pause tells where the next one begins. */
  default boolean needsPause() {
    return false;
  }

  /** Whether bytes between frames may be passed over without a word. */
  default boolean passes(byte b) {
    return false;
  }
}
