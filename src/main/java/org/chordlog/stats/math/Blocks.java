package org.chordlog.stats.math;

import java.util.ArrayList;
import java.util.List;

/**
 * Values in time order as at most so many means of equally many, doubled in width when full; exact
 * up to that many values.
 */
public final class Blocks {
  static final int MOST = 300;

  /** Mean of {@code count} values; place and time of the first of them. */
  public record Block(double at, long atMicros, double mean, long count) {
    Block with(Block next) {
      long sum = count + next.count;
      return new Block(
          (at * count + next.at * next.count) / sum,
          atMicros,
          mean + (next.mean - mean) * next.count / sum,
          sum);
    }
  }

  private final int most;
  private List<Block> blocks = new ArrayList<>();
  private long width = 1;

  public Blocks() {
    this(MOST);
  }

  public Blocks(int most) {
    this.most = most;
  }

  /** Takes in one value at a place and a time. */
  public void add(double at, long atMicros, double value) {
    add(new Block(at, atMicros, value, 1));
  }

  /** Takes in a block of values as one. */
  public void add(Block block) {
    int last = blocks.size() - 1;
    if (last >= 0 && blocks.get(last).count() < width) {
      blocks.set(last, blocks.get(last).with(block));
    } else {
      blocks.add(block);
    }
    if (blocks.size() > most) {
      widen();
    }
  }

  private void widen() {
    List<Block> wider = new ArrayList<>();
    for (int i = 0; i < blocks.size(); i += 2) {
      Block first = blocks.get(i);
      wider.add(i + 1 < blocks.size() ? first.with(blocks.get(i + 1)) : first);
    }
    blocks = wider;
    width *= 2;
  }

  /** Full ones; the newest while it fills only if there is no other. */
  public List<Block> complete() {
    int last = blocks.size() - 1;
    return last > 0 && blocks.get(last).count() < width
        ? List.copyOf(blocks.subList(0, last))
        : List.copyOf(blocks);
  }

  /** The blocks in their order, the newest last. */
  public List<Block> all() {
    return List.copyOf(blocks);
  }

  /** Forgets all blocks. */
  public void clear() {
    blocks.clear();
    width = 1;
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    packer.put(width);
    pack(blocks, packer);
  }

  /** Writes those blocks. */
  public static void pack(List<Block> blocks, Packer packer) {
    packer.put(blocks.size());
    blocks.forEach(
        block -> packer.put(block.at).put(block.atMicros).put(block.mean).put(block.count));
  }

  /** Takes up the state that was written. */
  public void unpack(Unpacker from) {
    width = from.aLong();
    blocks = unpackBlocks(from);
  }

  /** Reads the blocks that were written. */
  public static List<Block> unpackBlocks(Unpacker from) {
    int size = from.anInt();
    List<Block> unpacked = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      unpacked.add(new Block(from.aDouble(), from.aLong(), from.aDouble(), from.aLong()));
    }
    return unpacked;
  }
}
