package org.chordlog.correction;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;

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

  void write(StateWriter to) {
    to.putAll(points, TrailPoint::write);
  }

  void read(StateReader from) {
    points.clear();
    points.addAll(from.all(TrailPoint::read));
  }
}
