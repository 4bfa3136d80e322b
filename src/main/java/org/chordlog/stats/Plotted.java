package org.chordlog.stats;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.Plotter.Place;
import org.chordlog.stats.Signal.Side;

/** A point as judged on one chart. */
record Plotted(
    long number, Point point, Place place, int phase, boolean frozen, List<Signal> signals) {
  ChartPoint chartPoint() {
    return new ChartPoint(
        number,
        place.value(),
        place.lowerValue(),
        point.size(),
        point.firstReadingId(),
        point.lastReadingId(),
        point.piece(),
        point.position(),
        point.atMicros(),
        point.excluded(),
        point.reason(),
        signals);
  }

  void pack(Packer packer) {
    packer.put(number).put(phase).put(frozen);
    point.pack(packer);
    place.pack(packer);
    packer.put(signals.size());
    signals.forEach(signal -> pack(signal, packer));
  }

  static Plotted unpack(Unpacker from) {
    long number = from.aLong();
    int phase = from.anInt();
    boolean frozen = from.aBoolean();
    Point point = Point.unpack(from);
    Place place = Place.unpack(from);
    int count = from.anInt();
    List<Signal> signals = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      signals.add(signal(from));
    }
    return new Plotted(number, point, place, phase, frozen, List.copyOf(signals));
  }

  private static void pack(Signal signal, Packer packer) {
    packer.put(signal.test()).put(signal.side().name()).put(signal.points().size());
    signal.points().forEach(packer::put);
  }

  private static Signal signal(Unpacker from) {
    int test = from.anInt();
    Side side = Side.valueOf(from.text());
    int count = from.anInt();
    List<Long> points = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      points.add(from.aLong());
    }
    return new Signal(test, points, side);
  }
}
