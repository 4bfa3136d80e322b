package org.chordlog.decode;

/** Frames between markers, with a check behind the end where the profile says so. */
final class MarkerFinder implements Finder {
  private final byte[] start;
  private final byte[] end;
  private final int trailer;
  private final int most;

  MarkerFinder(Framing framing, Checksum checksum) {
    start = Bytes.of(framing.start());
    end = Bytes.of(framing.end());
    trailer = checksum.afterEnd() ? checksum.width() + checksum.separator().length() : 0;
    most = framing.maxLength();
  }

  @Override
  public int start(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && !begins(start, bytes, at, to)) {
      at++;
    }
    return at;
  }

  /** Whether the marker stands at that place as far as the bytes go. */
  private static boolean begins(byte[] marker, byte[] bytes, int at, int to) {
    for (int i = 0; i < marker.length && at + i < to; i++) {
      if (bytes[at + i] != marker[i]) {
        return false;
      }
    }
    return true;
  }

  @Override
  public int end(byte[] bytes, int from, int to) {
    int last = Math.min(to, from + most - trailer);
    for (int at = from + start.length; at + end.length <= last; at++) {
      if (begins(end, bytes, at, to)) {
        int stop = at + end.length + trailer;
        return stop <= to ? stop : WAIT;
      }
      if (at + start.length <= to && begins(start, bytes, at, to)) {
        return NONE;
      }
    }
    return to < from + most - trailer ? WAIT : NONE;
  }

  @Override
  public boolean passes(byte b) {
    return b == '\r' || b == '\n' || b == ' ' || b == 0;
  }
}
