package org.chordlog.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Values in time order as at most {@value #MOST} means of equally many, doubled in width when full;
 * exact up to {@value #MOST} values.
 */
final class Blocks {
  static final int MOST = 300;

  /** Mean of {@code count} values; place and time of the first of them. */
  record Block(double at, long atMicros, double mean, long count) {
    Block with(Block next) {
      long sum = count + next.count;
      return new Block(
          (at * count + next.at * next.count) / sum,
          atMicros,
          mean + (next.mean - mean) * next.count / sum,
          sum);
    }
  }

  private List<Block> blocks = new ArrayList<>();
  private long width = 1;

  void add(double at, long atMicros, double value) {
    Block block = new Block(at, atMicros, value, 1);
    int last = blocks.size() - 1;
    if (last >= 0 && blocks.get(last).count() < width) {
      blocks.set(last, blocks.get(last).with(block));
    } else {
      blocks.add(block);
    }
    if (blocks.size() > MOST) {
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
  List<Block> complete() {
    int last = blocks.size() - 1;
    return last > 0 && blocks.get(last).count() < width
        ? List.copyOf(blocks.subList(0, last))
        : List.copyOf(blocks);
  }

  void clear() {
    blocks.clear();
    width = 1;
  }

  void pack(Packer packer) {
    packer.put(width).put(blocks.size());
    blocks.forEach(
        block -> packer.put(block.at).put(block.atMicros).put(block.mean).put(block.count));
  }

  void unpack(Unpacker from) {
    width = from.aLong();
    int size = from.anInt();
    for (int i = 0; i < size; i++) {
      blocks.add(new Block(from.aDouble(), from.aLong(), from.aDouble(), from.aLong()));
    }
  }
}
