package org.chordlog.stats;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** Reads a checkpoint. */
final class Unpacker {
  private final ByteBuffer buffer;
  private final Map<Object, Object> seen = new HashMap<>();

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

  /** The first of its equals, so that what was shared when it was packed is shared again. */
  @SuppressWarnings("unchecked")
  <T> T shared(T value) {
    return (T) seen.computeIfAbsent(value, first -> first);
  }

  boolean atEnd() {
    return !buffer.hasRemaining();
  }
}
