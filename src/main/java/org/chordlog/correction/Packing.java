package org.chordlog.correction;

import java.nio.BufferUnderflowException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** Parts of a checkpoint that several states have. */
final class Packing {
  private Packing() {}

  static Packer put(Packer to, @Nullable Double value) {
    to.put(value != null);
    return value == null ? to : to.put(value.doubleValue());
  }

  static @Nullable Double nullable(Unpacker from) {
    return from.aBoolean() ? (Double) from.aDouble() : null;
  }

  /** The count, then each in the collection's order. */
  static <T> void putAll(Packer to, Collection<T> all, BiConsumer<T, Packer> each) {
    to.put(all.size());
    all.forEach(one -> each.accept(one, to));
  }

  static <T> List<T> all(Unpacker from, Function<Unpacker, T> each) {
    int count = from.anInt();
    List<T> all = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      all.add(each.apply(from));
    }
    return all;
  }

  /** Reads a whole checkpoint; {@link BadInput} for one of another version, or cut off. */
  static <T> T restore(byte[] checkpoint, int version, Function<Unpacker, T> state) {
    try {
      Unpacker from = new Unpacker(checkpoint);
      if (from.anInt() != version) {
        throw new BadInput("checkpoint", "it", "is of another version", String.valueOf(version));
      }
      return state.apply(from);
    } catch (BufferUnderflowException e) {
      throw new BadInput("checkpoint", "it", "ends early", "a whole one");
    }
  }
}
