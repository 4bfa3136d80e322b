package org.chordlog.correction;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** The newest 300 pieces and events. */
final class Trail {
  static final int MOST = 300;
  private final Deque<TrailPoint> points = new ArrayDeque<>();

  void add(TrailPoint point) {
    points.addLast(point);
    if (points.size() > MOST) {
      points.removeFirst();
    }
  }

  List<TrailPoint> points() {
    return List.copyOf(points);
  }

  void write(Packer to) {
    Packing.putAll(to, points, TrailPoint::write);
  }

  void read(Unpacker from) {
    points.clear();
    points.addAll(Packing.all(from, TrailPoint::read));
  }
}
