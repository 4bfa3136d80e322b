package org.chordlog.store.sqlite;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;

/**
 * Keys of a table's sealed rows, a bit each, in blocks that are there where a key of theirs is: ids
 * follow each other, while the revisions of two jobs are a million apart.
 */
final class SealedKeys {
  private static final int BLOCK_BITS = 12;
  private static final int IN_BLOCK = (1 << BLOCK_BITS) - 1;

  private final Map<Long, BitSet> blocks = new HashMap<>();
  private long newestBlock;
  private BitSet newest = new BitSet();

  SealedKeys() {
    blocks.put(newestBlock, newest);
  }

  /** False when it was there. */
  boolean add(long key) {
    BitSet block = block(key >> BLOCK_BITS);
    int bit = (int) (key & IN_BLOCK);
    boolean isNew = !block.get(bit);
    block.set(bit);
    return isNew;
  }

  /** Mostly the one that was asked for before, since rows are sealed in the order of their keys. */
  private BitSet block(long number) {
    if (number != newestBlock) {
      newestBlock = number;
      newest = blocks.computeIfAbsent(number, each -> new BitSet());
    }
    return newest;
  }

  boolean contains(long key) {
    BitSet block = blocks.get(key >> BLOCK_BITS);
    return block != null && block.get((int) (key & IN_BLOCK));
  }
}
