package org.chordlog.stats.drift;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.TheilSen;
import org.chordlog.stats.math.Unpacker;

/**
 * The newest {@value #MOST} stretches before the present one. A stretch whose slope is another one
 * than theirs (outside its 99 % interval) begins anew: what went before then says nothing of the
 * machine as it is.
 */
final class EarlierStretches {
  static final int MOST = 15;
  private static final double SURE = 0.99;
  private final List<Stretch> kept = new ArrayList<>();

  void add(Stretch ended) {
    if (ended.size() == 0) {
      return;
    }
    if (contradict(kept, ended, SURE)) {
      kept.clear();
    }
    kept.add(ended.thinned());
    if (kept.size() > MOST) {
      kept.remove(0);
    }
  }

  List<Stretch> stretches() {
    return List.copyOf(kept);
  }

  /** Whether the slope within the earlier ones lies outside the later one's interval. */
  static boolean contradict(List<Stretch> earlier, Stretch later, double confidence) {
    if (!later.enough() || !PooledTrend.possible(earlier)) {
      return false;
    }
    double before = PooledTrend.of(earlier).line().slope();
    TheilSen line = TheilSen.of(later.x(), later.y(), confidence);
    return before < line.lower() || before > line.upper();
  }

  /** Those that the present one does not contradict. */
  List<Stretch> agreeing(Stretch present) {
    return contradict(kept, present, SURE) ? List.of() : List.copyOf(kept);
  }

  void pack(Packer packer) {
    packer.put(kept.size());
    kept.forEach(each -> each.pack(packer));
  }

  void unpack(Unpacker from) {
    int size = from.anInt();
    for (int i = 0; i < size; i++) {
      kept.add(Stretch.unpack(from));
    }
  }
}
