package org.chordlog.stats;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/** Reads a checkpoint. */
final class Unpacker {
  private final ByteBuffer buffer;

  Unpacker(byte[] bytes) {
    buffer = ByteBuffer.wrap(bytes);
  }

  long aLong() {
    return buffer.getLong();
  }

  int anInt() {
    return buffer.getInt();
  }

  double aDouble() {
    return buffer.getDouble();
  }

  boolean aBoolean() {
    return buffer.get() != 0;
  }

  String text() {
    byte[] bytes = new byte[anInt()];
    buffer.get(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  boolean atEnd() {
    return !buffer.hasRemaining();
  }
}
