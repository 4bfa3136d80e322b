package org.chordlog.decode;

/**
 * A frame inside a larger array: {@code bytes[from, to)} with markers and check but without its
 * line end, and the body inside. The object is used again for the next frame.
 */
final class Frame {
  byte[] bytes = new byte[0];
  int from;
  int to;
  int bodyFrom;
  int bodyTo;
  long nanos;

  void set(byte[] newBytes, int newFrom, int newTo, long newNanos) {
    bytes = newBytes;
    from = newFrom;
    to = newTo;
    bodyFrom = newFrom;
    bodyTo = newTo;
    nanos = newNanos;
  }

  byte[] raw() {
    return Bytes.copy(bytes, from, to);
  }

  /** The frame with its markers and check, without blanks around it. */
  String whole() {
    return Bytes.text(bytes, from, to).strip();
  }

  String body() {
    return Bytes.text(bytes, bodyFrom, bodyTo);
  }
}
