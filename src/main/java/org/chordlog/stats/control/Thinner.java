package org.chordlog.stats.control;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.function.Consumer;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * At most {@value #RECENT} newest points of a chart, and of everything older at most {@value
 * #BUCKETS} spans of equally many points, each with its lowest, highest, farthest signalling and
 * newest excluded point. The spans double in width as the chart grows; up to 350 points nothing is
 * left out, up to 500 nothing but points equal to their neighbour.
 */
final class Thinner {
  static final int RECENT = 200;
  static final int BUCKETS = 150;
  private final Deque<Plotted> recent = new ArrayDeque<>();
  private List<Bucket> buckets = new ArrayList<>();
  private long width = 1;

  void add(Plotted plotted) {
    recent.addLast(plotted);
    while (recent.size() > RECENT) {
      settle(recent.removeFirst());
    }
  }

  private void settle(Plotted plotted) {
    long index = (plotted.number() - 1) / width;
    if (buckets.isEmpty() || buckets.get(buckets.size() - 1).index() != index) {
      buckets.add(new Bucket(index));
    }
    buckets.get(buckets.size() - 1).add(plotted);
    if (buckets.size() > BUCKETS) {
      widen();
    }
  }

  private void widen() {
    width *= 2;
    List<Bucket> old = buckets;
    buckets = new ArrayList<>();
    old.forEach(bucket -> bucket.forEach(this::settle));
  }

  void forEach(Consumer<Plotted> use) {
    buckets.forEach(bucket -> bucket.forEach(use));
    recent.forEach(use);
  }

  void pack(Packer packer) {
    List<Plotted> kept = new ArrayList<>();
    forEach(kept::add);
    packer.put(width).put(kept.size() - recent.size()).put(recent.size());
    kept.forEach(plotted -> plotted.pack(packer));
  }

  void unpack(Unpacker from) {
    width = from.aLong();
    int old = from.anInt();
    int fresh = from.anInt();
    for (int i = 0; i < old; i++) {
      settle(Plotted.unpack(from));
    }
    for (int i = 0; i < fresh; i++) {
      add(Plotted.unpack(from));
    }
  }
}
