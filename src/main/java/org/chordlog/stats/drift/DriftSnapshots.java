package org.chordlog.stats.drift;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.chordlog.stats.drift.DriftSnapshot.BlockMean;
import org.chordlog.stats.drift.DriftSnapshot.Trend;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.TheilSen;
import org.jspecify.annotations.Nullable;

/** The drift of a machine as its picture shows it, in %. */
final class DriftSnapshots {
  private static final int STEPS = 20;
  private static final double PERCENT = 100;
  private final List<Stretch> earlier;
  private final List<Block> blocks;
  private final MachineVerdict verdict;

  /** {@code blocks} are those of the present setting. */
  DriftSnapshots(List<Stretch> earlier, List<Block> blocks, MachineVerdict verdict) {
    this.earlier = earlier;
    this.blocks = blocks;
    this.verdict = verdict;
  }

  DriftSnapshot snapshot(String machine, @Nullable Double tolerance) {
    List<BlockMean> jobs =
        Stream.concat(earlier.stream().flatMap(each -> each.blocks().stream()), blocks.stream())
            .map(
                block ->
                    new BlockMean(
                        0, "", block.at(), block.atMicros(), PERCENT * block.mean(), null, null))
            .toList();
    Long since = verdict.sincePiece();
    boolean jumped = verdict.state() == MachineVerdict.State.JUMPED;
    return new DriftSnapshot(
        machine,
        "deviation of curvature from the target",
        "%",
        jobs,
        trend(),
        blocks.isEmpty() ? 0 : last().at(),
        tolerance == null ? null : (Double) (-PERCENT * tolerance),
        tolerance == null ? null : (Double) (PERCENT * tolerance),
        jumped && since != null ? since.doubleValue() : null,
        verdict.text(),
        List.of());
  }

  private Block last() {
    return blocks.get(blocks.size() - 1);
  }

  /**
   * The line over its own span and half as much again; the band is the slope's, about its middle.
   */
  private List<Trend> trend() {
    TheilSen line = verdict.slope();
    if (line == null || blocks.size() < 2 || verdict.state() != MachineVerdict.State.CREEPING) {
      return List.of();
    }
    double from = from();
    double to = last().at() + (last().at() - from) / 2;
    double middle = (from + last().at()) / 2;
    return IntStream.rangeClosed(0, STEPS)
        .mapToObj(i -> trend(line, from + (to - from) * i / STEPS, middle))
        .toList();
  }

  /** Where the creep began, if under the present setting. */
  private double from() {
    Long since = verdict.sincePiece();
    return Math.max(blocks.get(0).at(), since == null ? 0 : since.doubleValue());
  }

  private static Trend trend(TheilSen line, double at, double middle) {
    double value = line.at(at);
    double low = value + (line.lower() - line.slope()) * (at - middle);
    double high = value + (line.upper() - line.slope()) * (at - middle);
    return new Trend(
        at, PERCENT * value, PERCENT * Math.min(low, high), PERCENT * Math.max(low, high));
  }
}
