package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * The newest points of a phase, and the sums of those before them: of the first {@value #REFERENCE}
 * that belong to no spell.
 */
final class Newest {
  /** Points compared with. */
  static final int REFERENCE = 300;

  /** Room for the longest window and the time that a call is held. */
  private static final int OPEN = 32;

  private final List<Watched> points = new ArrayList<>();
  private Sums settled = new Sums();

  void add(Watched point) {
    if (points.size() == OPEN) {
      Watched oldest = points.remove(0);
      if (!oldest.strange() && settled.points() < REFERENCE) {
        settled.add(oldest.sums());
      }
    }
    points.add(point);
  }

  void clear() {
    points.clear();
    settled = new Sums();
  }

  int size() {
    return points.size();
  }

  /** 0 is the oldest. */
  Watched get(int index) {
    return points.get(index);
  }

  Watched last() {
    return points.get(points.size() - 1);
  }

  /** The point that is {@code count} − 1 before the last. */
  Watched back(int count) {
    return points.get(points.size() - count);
  }

  /** Sums of all that belong to no spell. */
  Sums good() {
    Sums sums = new Sums();
    sums.add(settled);
    for (Watched each : points) {
      if (!each.strange()) {
        sums.add(each.sums());
      }
    }
    return sums;
  }

  /**
   * The sums of the last points without a far one, if there is just one: by itself it says nothing
   * of the level or the spread of the others, and has been told.
   */
  Sums withoutLoneFarPoint(int count, Sums window) {
    Watched far = null;
    int fars = 0;
    for (int i = points.size() - count; i < points.size(); i++) {
      if (points.get(i).refused(false, 0)) {
        far = points.get(i);
        fars++;
      }
    }
    return far != null && fars == 1 ? window.without(far.sums()) : window;
  }

  void markStrange(int count) {
    for (int i = points.size() - count; i < points.size(); i++) {
      points.get(i).markStrange();
    }
  }

  void pack(Packer packer) {
    settled.pack(packer);
    packer.put(points.size());
    points.forEach(each -> each.pack(packer));
  }

  void unpack(Unpacker from) {
    settled = Sums.unpack(from);
    int count = from.anInt();
    for (int i = 0; i < count; i++) {
      points.add(Watched.unpack(from));
    }
  }
}
