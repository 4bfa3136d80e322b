package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * The newest points of a phase, and the sums of those before them: of the first {@value #REFERENCE}
 * that belong to no spell.
 */
final class NewestPoints {
  /** Points compared with. */
  static final int REFERENCE = 300;

  /** Room for the longest window and the time that a call is held. */
  private static final int OPEN = 32;

  private final List<WatchedPoint> points = new ArrayList<>();
  private Sums settled = new Sums();

  void add(WatchedPoint point) {
    if (points.size() == OPEN) {
      WatchedPoint oldest = points.remove(0);
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
  WatchedPoint get(int index) {
    return points.get(index);
  }

  WatchedPoint last() {
    return points.get(points.size() - 1);
  }

  /** The point that is {@code count} − 1 before the last. */
  WatchedPoint back(int count) {
    return points.get(points.size() - count);
  }

  /** Sums of all that belong to no spell. */
  Sums good() {
    Sums sums = new Sums();
    sums.add(settled);
    for (WatchedPoint each : points) {
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
    WatchedPoint far = null;
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
      points.add(WatchedPoint.unpack(from));
    }
  }
}
