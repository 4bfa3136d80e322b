package org.chordlog.correction;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Map.Entry;
import java.util.function.BiConsumer;
import java.util.function.Function;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** A table of the 64 entries that were used last. */
final class Recent<T> {
  static final int MOST = 64;
  private final Map<String, T> entries = new LinkedHashMap<>(16, 0.75f, true);

  /** Counts as use. */
  @Nullable T find(String key) {
    return entries.get(key);
  }

  void put(String key, T entry) {
    entries.put(key, entry);
    if (entries.size() > MOST) {
      entries.remove(entries.keySet().iterator().next());
    }
  }

  void clear() {
    entries.clear();
  }

  Collection<T> all() {
    return entries.values();
  }

  /** Oldest use first, so that reading them back gives the same order. */
  void write(Packer to, BiConsumer<T, Packer> each) {
    Packing.putAll(
        to,
        entries.entrySet(),
        (Entry<String, T> entry, Packer out) -> {
          out.put(entry.getKey());
          each.accept(entry.getValue(), out);
        });
  }

  void read(Unpacker from, Function<Unpacker, T> each) {
    entries.clear();
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      entries.put(from.text(), each.apply(from));
    }
  }
}
