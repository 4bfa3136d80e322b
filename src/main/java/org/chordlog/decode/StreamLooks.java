package org.chordlog.decode;

import java.util.List;

/** What a stream looks like before it can be read. */
final class StreamLooks {
  private static final double TEXT_SHARE = 0.97;
  private static final int LEAST_BYTES = 4;
  private static final int LONGEST_FRAME = 64;
  private static final int REPEATED = 4;

  private StreamLooks() {}

  /** Whether it is text with digits: a wrong rate or parity hardly gives that. */
  static boolean isText(List<Arrival> stream) {
    List<Arrival> seen = Stream7.worthMasking(stream) ? Stream7.masked(stream) : stream;
    int all = 0;
    int text = 0;
    int digits = 0;
    for (Arrival arrival : seen) {
      for (byte b : arrival.bytes()) {
        all++;
        text += isText(b) ? 1 : 0;
        digits += b >= '0' && b <= '9' ? 1 : 0;
      }
    }
    return all >= LEAST_BYTES && text >= TEXT_SHARE * all && digits > 0;
  }

  /** Printable, between tab and carriage return, or a marker of text. */
  private static boolean isText(byte b) {
    return (b >= ' ' && b < 0x7F) || (b >= '\t' && b <= '\r') || b == 2 || b == 3;
  }

  /** Whether the same bytes come over and over. */
  static boolean repeats(List<Arrival> stream) {
    byte[] bytes = BinaryCut.newest(stream);
    for (int length = 1; length <= LONGEST_FRAME && length * REPEATED <= bytes.length; length++) {
      if (repeats(bytes, length)) {
        return true;
      }
    }
    return false;
  }

  private static boolean repeats(byte[] bytes, int length) {
    for (int i = length; i < bytes.length; i++) {
      if (bytes[i] != bytes[i - length]) {
        return false;
      }
    }
    return true;
  }
}
