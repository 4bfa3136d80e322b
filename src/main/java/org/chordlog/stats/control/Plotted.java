package org.chordlog.stats.control;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.control.Plotter.Place;
import org.chordlog.stats.control.Signal.Side;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** A point as judged on one chart; {@code lowerValue} is NaN but on a CUSUM. */
record Plotted(
    long number,
    Point point,
    double value,
    double lowerValue,
    double z,
    JudgedLimits basis,
    List<Signal> signals) {
  static Plotted of(
      long number, Point point, Place place, JudgedLimits basis, List<Signal> signals) {
    Double lower = place.lowerValue();
    double lowerValue = lower == null ? Double.NaN : lower;
    return new Plotted(number, point, place.value(), lowerValue, place.z(), basis, signals);
  }

  /** The lowest that is drawn. */
  double lowest() {
    return Double.isNaN(lowerValue) ? value : lowerValue;
  }

  ChartPoint chartPoint() {
    return new ChartPoint(
        number, value, drawnBelow(), point.size(), point.readings(), point.exclusion(), signals);
  }

  private @Nullable Double drawnBelow() {
    return Double.isNaN(lowerValue) ? null : lowerValue;
  }

  void pack(Packer packer) {
    packer.put(number).put(basis.phase()).put(basis.frozen());
    point.pack(packer);
    new Place(value, drawnBelow(), basis.centre(), basis.lower(), basis.upper(), z).pack(packer);
    packer.put(signals.size());
    signals.forEach(signal -> pack(signal, packer));
  }

  static Plotted unpack(Unpacker from) {
    long number = from.aLong();
    int phase = from.anInt();
    boolean frozen = from.aBoolean();
    Point point = from.shared(Point.unpack(from));
    Place place = Place.unpack(from);
    JudgedLimits basis = from.shared(place.basis(phase, frozen));
    int count = from.anInt();
    List<Signal> signals = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      signals.add(signal(from));
    }
    return of(number, point, place, basis, List.copyOf(signals));
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
