package org.chordlog.stats.drift;

import java.util.List;
import org.chordlog.stats.math.Blocks;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.ChangePoint;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.MannKendall;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.TheilSen;
import org.chordlog.stats.math.Unpacker;

/** The pieces of a machine between two events that move its level. */
final class Stretch {
  /** For each of two tests. */
  static final double ERROR = 0.003;

  /** How many means an earlier stretch is reduced to. */
  private static final int MEANS = 40;

  private final Start start;
  private final List<Block> blocks;
  private final double[] x;
  private final double[] y;
  private final MannKendall trend;

  Stretch(Start start, List<Block> blocks) {
    this.start = start;
    this.blocks = List.copyOf(blocks);
    x = blocks.stream().mapToDouble(Block::at).toArray();
    y = blocks.stream().mapToDouble(Block::mean).toArray();
    trend = MannKendall.of(y);
  }

  Start start() {
    return start;
  }

  List<Block> blocks() {
    return blocks;
  }

  int size() {
    return x.length;
  }

  double[] x() {
    return x;
  }

  double[] y() {
    return y;
  }

  boolean enough() {
    return size() >= MachineVerdict.LEAST;
  }

  MannKendall trend() {
    return trend;
  }

  /** At least two blocks. */
  ChangePoint change() {
    return ChangePoint.of(y);
  }

  /** Of the whole stretch. */
  TheilSen line() {
    return TheilSen.of(x, y, Interval.CONFIDENCE);
  }

  /** Mann-Kendall or Pettitt refuses that it is steady. */
  boolean refused() {
    return enough() && (trend.pValue() < ERROR || change().pValue() < ERROR);
  }

  /** The blocks from that piece on. */
  Stretch from(double piece) {
    return new Stretch(start, blocks.stream().filter(each -> each.at() >= piece).toList());
  }

  /** The blocks before that piece, and those from it on as a stretch that begins with a jump. */
  List<Stretch> split(MachinePlace jump) {
    List<Block> before = blocks.stream().filter(each -> each.at() < jump.piece()).toList();
    Start step = new Start(Start.Cause.JUMP, jump, "", null);
    return List.of(
        new Stretch(start, before), new Stretch(step, from((double) jump.piece()).blocks()));
  }

  /** As at most {@value #MEANS} means. */
  Stretch thinned() {
    Blocks fewer = new Blocks(MEANS);
    blocks.forEach(fewer::add);
    return new Stretch(start, fewer.all());
  }

  void pack(Packer packer) {
    start.pack(packer);
    Blocks.pack(blocks, packer);
  }

  static Stretch unpack(Unpacker from) {
    return new Stretch(Start.unpack(from), Blocks.unpackBlocks(from));
  }
}
