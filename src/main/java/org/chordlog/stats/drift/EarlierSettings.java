package org.chordlog.stats.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.stats.math.Blocks;
import org.chordlog.stats.math.Blocks.Block;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.TheilSen;
import org.chordlog.stats.math.Unpacker;

/**
 * The newest {@value #MOST} stretches before the present setting of the rollers, split where they
 * jumped. A stretch whose slope is another one than theirs (outside its 99 % interval) begins anew:
 * what went before then says nothing of the machine as it is.
 */
final class EarlierSettings {
  static final int MOST = 15;
  private static final double SURE = 0.99;

  /** A stretch, thinned, with where it began to creep, else its start. */
  record Ended(Stretch stretch, Block since) {}

  private final List<Ended> kept = new ArrayList<>();

  void close(Stretch ended) {
    ended.parts().forEach(this::add);
  }

  private void add(Stretch ended) {
    if (contradictedBy(ended)) {
      kept.clear();
    }
    if (ended.size() > 0) {
      kept.add(new Ended(ended.thinned(), ended.blocks().get(ended.since())));
    }
    if (kept.size() > MOST) {
      kept.remove(0);
    }
  }

  List<Stretch> stretches() {
    return kept.stream().map(Ended::stretch).toList();
  }

  boolean isEmpty() {
    return kept.isEmpty();
  }

  /** Where the oldest began to creep, else its start. */
  Block since() {
    return kept.get(0).since();
  }

  boolean contradictedBy(Stretch later) {
    if (!later.enough() || !PooledTrend.possible(stretches())) {
      return false;
    }
    double before = PooledTrend.of(stretches()).line().slope();
    TheilSen line = TheilSen.of(later.x(), later.y(), SURE);
    return before < line.lower() || before > line.upper();
  }

  /** With the present one. */
  List<Stretch> and(Stretch present) {
    return Stream.concat(stretches().stream(), Stream.of(present.thinned())).toList();
  }

  void pack(Packer packer) {
    packer.put(kept.size());
    kept.forEach(
        each -> {
          Blocks.pack(each.stretch().blocks(), packer);
          Blocks.pack(List.of(each.since()), packer);
        });
  }

  void unpack(Unpacker from) {
    int size = from.anInt();
    for (int i = 0; i < size; i++) {
      Stretch stretch = new Stretch(Blocks.unpackBlocks(from));
      kept.add(new Ended(stretch, Blocks.unpackBlocks(from).get(0)));
    }
  }
}
