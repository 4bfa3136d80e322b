package org.chordlog.stats.math;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/** Writes a checkpoint. */
public final class Packer {
  private ByteBuffer buffer = ByteBuffer.allocate(1 << 12);

  /** Appends eight bytes. */
  public Packer put(long value) {
    room(Long.BYTES).putLong(value);
    return this;
  }

  /** Appends four bytes. */
  public Packer put(int value) {
    room(Integer.BYTES).putInt(value);
    return this;
  }

  /** Appends eight bytes: the same bits come back. */
  public Packer put(double value) {
    room(Double.BYTES).putDouble(value);
    return this;
  }

  /** Appends one byte. */
  public Packer put(boolean value) {
    room(1).put((byte) (value ? 1 : 0));
    return this;
  }

  /** Appends the length and the text in UTF-8. */
  public Packer put(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    put(bytes.length);
    room(bytes.length).put(bytes);
    return this;
  }

  /** All that was put, in its order. */
  public byte[] bytes() {
    byte[] bytes = new byte[buffer.position()];
    buffer.flip().get(bytes);
    return bytes;
  }

  private ByteBuffer room(int bytes) {
    if (buffer.remaining() < bytes) {
      ByteBuffer larger = ByteBuffer.allocate(2 * buffer.capacity() + bytes);
      buffer = larger.put(buffer.flip());
    }
    return buffer;
  }
}
