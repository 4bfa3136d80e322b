package org.chordlog.stats.control;

import java.util.function.Supplier;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** Running sums that control limits of charts are estimated from. */
public interface Tally {
  /** Takes in the next point that counts. */
  void add(Point point);

  /** Points taken in, without the excluded ones. */
  long count();

  /** What limits of that chart rest on. */
  Estimate estimate(ChartKind kind);

  /** Writes the whole state. */
  void pack(Packer packer);

  /** Takes up the state that was written. */
  void unpack(Unpacker from);

  /** Of single readings: sigma from the moving range. */
  static Supplier<Tally> singles() {
    return SingleTally::new;
  }

  /** Of subgroups: sigma from their ranges or standard deviations. */
  static Supplier<Tally> subgroups(Spread spread) {
    return () -> new SubgroupTally(spread);
  }
}
