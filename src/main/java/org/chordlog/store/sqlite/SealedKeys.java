package org.chordlog.store.sqlite;

import java.util.BitSet;
import java.util.HashSet;
import java.util.Set;

/** Keys of a table's sealed rows; ids are dense and small, others rare. */
final class SealedKeys {
  private final BitSet small = new BitSet();
  private final Set<Long> large = new HashSet<>();

  /** False when it was there. */
  boolean add(long key) {
    if (key < 0 || key > Integer.MAX_VALUE - 1) {
      return large.add(key);
    }
    boolean isNew = !small.get((int) key);
    small.set((int) key);
    return isNew;
  }

  boolean contains(long key) {
    return (key >= 0 && key < Integer.MAX_VALUE) ? small.get((int) key) : large.contains(key);
  }
}
