package org.chordlog.store.sqlite;

import java.io.ByteArrayOutputStream;

/** Whole numbers in as few bytes as they need: zigzag, then seven bits a byte, lowest first. */
final class Varints {
  private Varints() {}

  static void write(ByteArrayOutputStream to, long value) {
    long rest = (value << 1) ^ (value >> 63);
    while ((rest & ~0x7fL) != 0) {
      to.write((int) ((rest & 0x7f) | 0x80));
      rest >>>= 7;
    }
    to.write((int) rest);
  }

  /** Reads on from where the last call ended. */
  static final class Reader {
    private final byte[] from;
    private int at;

    Reader(byte[] from) {
      this.from = from;
    }

    long next() {
      long value = 0;
      int shift = 0;
      byte last;
      do {
        last = from[at++];
        value |= (last & 0x7fL) << shift;
        shift += 7;
      } while (last < 0);
      return (value >>> 1) ^ -(value & 1);
    }
  }
}
