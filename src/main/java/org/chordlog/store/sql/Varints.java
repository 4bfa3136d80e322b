package org.chordlog.store.sql;

import java.util.Arrays;

/** Whole numbers of variable length: zigzag, then seven bits a byte, lowest first. */
final class Varints {
  private Varints() {}

  /** Grows as needed. */
  static final class Writer {
    private static final int MOST_BYTES = 10;
    private byte[] to;
    private int at;

    Writer(int expectedBytes) {
      to = new byte[Math.max(MOST_BYTES, expectedBytes)];
    }

    void write(long value) {
      if (to.length - at < MOST_BYTES) {
        to = Arrays.copyOf(to, 2 * to.length);
      }
      long rest = (value << 1) ^ (value >> 63);
      while ((rest & ~0x7fL) != 0) {
        to[at++] = (byte) ((rest & 0x7f) | 0x80);
        rest >>>= 7;
      }
      to[at++] = (byte) rest;
    }

    byte[] bytes() {
      return Arrays.copyOf(to, at);
    }
  }

  /** Each call reads the next number. */
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
