package org.chordlog.stats.math;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** Reads a checkpoint. */
public final class Unpacker {
  private final ByteBuffer buffer;
  private final Map<Object, Object> seen = new HashMap<>();

  public Unpacker(byte[] bytes) {
    buffer = ByteBuffer.wrap(bytes);
  }

  /** The next eight bytes. */
  public long aLong() {
    return buffer.getLong();
  }

  /** The next four bytes. */
  public int anInt() {
    return buffer.getInt();
  }

  /** The next eight bytes, bit for bit as they were put. */
  public double aDouble() {
    return buffer.getDouble();
  }

  /** The next byte. */
  public boolean aBoolean() {
    return buffer.get() != 0;
  }

  /** The next text. */
  public String text() {
    byte[] bytes = new byte[anInt()];
    buffer.get(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  /** The first of its equals, so that what was shared when it was packed is shared again. */
  @SuppressWarnings("unchecked")
  public <T> T shared(T value) {
    return (T) seen.computeIfAbsent(value, first -> first);
  }
}
