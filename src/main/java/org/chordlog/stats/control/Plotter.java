package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/** Turns the points of a phase, one after the other, into the values and limits of one chart. */
interface Plotter {
  /** Null where the chart has no value for the point. */
  @Nullable Place place(Point point, Estimate estimate);

  /** Back to the start of a phase. */
  void restart();

  Plotter copy();

  void pack(Packer packer);

  void unpack(Unpacker from);

  /**
   * Where a point is drawn; {@code z} is its distance from the centre, 3 at the control limit.
   * Limits are NaN where there are none.
   */
  record Place(
      double value,
      @Nullable Double lowerValue,
      double centre,
      double lower,
      double upper,
      double z) {
    /** Symmetric limits {@code half} from the centre. */
    static Place level(double value, double centre, double half) {
      return new Place(
          value, null, centre, centre - half, centre + half, standardise(value - centre, half));
    }

    JudgedLimits basis(int phase, boolean frozen) {
      return new JudgedLimits(centre, lower, upper, phase, frozen);
    }

    void pack(Packer packer) {
      packer.put(value).put(lowerValue != null).put(lowerValue == null ? 0 : lowerValue);
      packer.put(centre).put(lower).put(upper).put(z);
    }

    static Place unpack(Unpacker from) {
      double value = from.aDouble();
      boolean two = from.aBoolean();
      double below = from.aDouble();
      return new Place(
          value,
          two ? Double.valueOf(below) : null,
          from.aDouble(),
          from.aDouble(),
          from.aDouble(),
          from.aDouble());
    }

    static double standardise(double distance, double half) {
      return distance == 0 ? 0 : 3 * distance / half;
    }
  }

  /** A plotter whose place depends on the point alone. */
  abstract class Memoryless implements Plotter {
    @Override
    public final void restart() {}

    @Override
    public final Plotter copy() {
      return this;
    }

    @Override
    public final void pack(Packer packer) {}

    @Override
    public final void unpack(Unpacker from) {}
  }
}
