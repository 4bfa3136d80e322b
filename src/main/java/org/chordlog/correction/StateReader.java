package org.chordlog.correction;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/** Reads what {@link StateWriter} wrote; {@link BadInput} where the bytes are not that. */
final class StateReader {
  private final ByteBuffer buffer;

  StateReader(byte[] bytes) {
    buffer = ByteBuffer.wrap(bytes);
  }

  double aDouble() {
    return taken(ByteBuffer::getDouble);
  }

  @Nullable Double aNullable() {
    return aBoolean() ? (Double) aDouble() : null;
  }

  long aLong() {
    return taken(ByteBuffer::getLong);
  }

  boolean aBoolean() {
    byte value = taken(ByteBuffer::get);
    return value != 0;
  }

  int count() {
    long count = aLong();
    if (count < 0 || count > buffer.remaining()) {
      throw damaged("a count of " + count);
    }
    return (int) count;
  }

  String text() {
    byte[] bytes = new byte[count()];
    buffer.get(bytes);
    return new String(bytes, StandardCharsets.UTF_8);
  }

  <T> List<T> all(Function<StateReader, T> each) {
    int count = count();
    List<T> all = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      all.add(each.apply(this));
    }
    return all;
  }

  void end() {
    if (buffer.hasRemaining()) {
      throw damaged(buffer.remaining() + " bytes too many");
    }
  }

  private <T> T taken(Function<ByteBuffer, T> part) {
    try {
      return part.apply(buffer);
    } catch (BufferUnderflowException e) {
      throw damaged("an early end");
    }
  }

  private static BadInput damaged(String what) {
    return new BadInput("checkpoint", what, "is not what was written", "an undamaged state");
  }
}
