package org.chordlog.correction;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.function.BiConsumer;
import org.jspecify.annotations.Nullable;

/** Writes a state as bytes, bit for bit. */
final class StateWriter {
  private ByteBuffer buffer = ByteBuffer.allocate(1 << 10);

  StateWriter put(double value) {
    room(Double.BYTES).putDouble(value);
    return this;
  }

  StateWriter put(@Nullable Double value) {
    put(value != null);
    return value == null ? this : put(value.doubleValue());
  }

  StateWriter put(long value) {
    room(Long.BYTES).putLong(value);
    return this;
  }

  StateWriter put(boolean value) {
    room(1).put((byte) (value ? 1 : 0));
    return this;
  }

  StateWriter put(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    put((long) bytes.length);
    room(bytes.length).put(bytes);
    return this;
  }

  /** The count, then each in the collection's order. */
  <T> StateWriter putAll(Collection<T> all, BiConsumer<T, StateWriter> each) {
    put((long) all.size());
    all.forEach(one -> each.accept(one, this));
    return this;
  }

  byte[] bytes() {
    byte[] bytes = new byte[buffer.position()];
    buffer.duplicate().flip().get(bytes);
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
