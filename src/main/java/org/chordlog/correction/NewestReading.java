package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * How the newest reading was judged: weights of a steady level, a jump, a stray reading and a move
 * that nobody recorded; its variance, that of the forecast error, the error itself.
 */
record NewestReading(
    double steady,
    double jumped,
    double stray,
    double silent,
    double variance,
    double forecastVariance,
    double innovation) {
  static NewestReading none() {
    return new NewestReading(1, 0, 0, 0, Double.NaN, Double.NaN, Double.NaN);
  }

  void write(Packer to) {
    to.put(steady).put(jumped).put(stray).put(silent);
    to.put(variance).put(forecastVariance).put(innovation);
  }

  static NewestReading read(Unpacker from) {
    return new NewestReading(
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble());
  }
}
