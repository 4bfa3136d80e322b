package org.chordlog.stats.control;

import java.util.function.Supplier;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** Running sums that control limits of charts are estimated from. */
public interface Tally {
  void add(Point point);

  /** Points taken in, without the excluded ones. */
  long count();

  /** What limits of that chart rest on. */
  Estimate estimate(ChartKind kind);

  void pack(Packer packer);

  void unpack(Unpacker from);

  static Supplier<Tally> singles() {
    return SingleTally::new;
  }

  static Supplier<Tally> subgroups(Spread spread) {
    return () -> new SubgroupTally(spread);
  }
}
