package org.chordlog.decode;

/**
 * Frames of one length. Without start bytes each place may be the start of one; what stands between
 * start and end bytes may be anything, so these are looked for at their places alone.
 */
final class LengthFinder implements Finder {
  private final int length;
  private final boolean pauses;
  private final byte[] start;
  private final byte[] end;

  LengthFinder(Framing framing) {
    length = framing.length();
    pauses = framing.idleMs() > 0;
    start = Bytes.of(framing.start());
    end = Bytes.of(framing.end());
  }

  @Override
  public int start(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && !agrees(start, bytes, at, to)) {
      at++;
    }
    return at;
  }

  /** Whether those bytes are there, as far as the stream goes. */
  private static boolean agrees(byte[] wanted, byte[] bytes, int at, int to) {
    for (int i = 0; i < wanted.length && at + i < to; i++) {
      if (bytes[at + i] != wanted[i]) {
        return false;
      }
    }
    return true;
  }

  @Override
  public int end(byte[] bytes, int from, int to) {
    if (to - from < length) {
      return WAIT;
    }
    return agrees(end, bytes, from + length - end.length, to) ? from + length : NONE;
  }

  @Override
  public boolean needsPause() {
    return pauses;
  }
}
