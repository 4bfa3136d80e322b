package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** Running mean and sum of squared deviations (Welford 1962). */
record Spread(long count, double mean, double squares) {
  static Spread none() {
    return new Spread(0, 0, 0);
  }

  Spread with(double value) {
    double step = value - mean;
    double next = mean + step / (count + 1);
    return new Spread(count + 1, next, squares + step * (value - next));
  }

  void write(Packer to) {
    to.put(count).put(mean).put(squares);
  }

  static Spread read(Unpacker from) {
    return new Spread(from.aLong(), from.aDouble(), from.aDouble());
  }
}
