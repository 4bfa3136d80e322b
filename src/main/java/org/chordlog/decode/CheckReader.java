package org.chordlog.decode;

import org.jspecify.annotations.Nullable;

/** Verifies the check of a frame and takes it off. */
final class CheckReader {
  private final Checksum checksum;
  private final byte[] separator;
  private final int startLength;
  private final int endLength;

  CheckReader(Checksum checksum, int startLength, int endLength) {
    this.checksum = checksum;
    this.separator = Bytes.of(checksum.separator());
    this.startLength = startLength;
    this.endLength = endLength;
  }

  /** Null, or what is wrong; sets the body of the frame. */
  @Nullable String verify(Frame frame) {
    int checkFrom = frame.to - (checksum.afterEnd() ? 0 : endLength) - checksum.width();
    int bodyTo = checkFrom - separator.length - (checksum.afterEnd() ? endLength : 0);
    if (bodyTo < frame.from + startLength) {
      return "too short for its check";
    }
    frame.bodyTo = bodyTo;
    if (!separated(frame.bytes, checkFrom)) {
      return "no separator before the check";
    }
    int from = frame.from + (checksum.coversStart() ? 0 : startLength);
    int to = bodyTo + (checksum.coversEnd() ? endLength : 0);
    int sent = sent(frame.bytes, checkFrom);
    return sent == Sums.of(checksum.kind(), frame.bytes, from, to) ? null : "check does not agree";
  }

  private boolean separated(byte[] bytes, int checkFrom) {
    for (int i = 0; i < separator.length; i++) {
      if (bytes[checkFrom - separator.length + i] != separator[i]) {
        return false;
      }
    }
    return true;
  }

  private int sent(byte[] bytes, int at) {
    if (checksum.encoding() != Checksum.Encoding.RAW) {
      return digits(bytes, at, checksum.encoding() == Checksum.Encoding.HEX ? 16 : 10);
    }
    int first = bytes[at] & 0xFF;
    if (checksum.width() == 1) {
      return first;
    }
    int second = bytes[at + 1] & 0xFF;
    return checksum.highFirst() ? first << 8 | second : second << 8 | first;
  }

  /** The number of the check's digits of that base, or -1. */
  private int digits(byte[] bytes, int at, int base) {
    int number = 0;
    for (int i = at; i < at + checksum.width(); i++) {
      int digit = bytes[i] < 0 ? -1 : Character.digit(bytes[i], base);
      if (digit < 0) {
        return -1;
      }
      number = number * base + digit;
    }
    return number;
  }
}
