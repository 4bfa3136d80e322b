package org.chordlog.correction;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Whether followed advice improved the level, judged by the mean of up to five pieces after it;
 * {@code said} is the sum of the probabilities that were stated. A promise is open while {@code
 * before} (the level then, absolute, permil) is not NaN.
 */
record Promises(
    long given, long kept, double said, double before, double chance, double sum, int pieces) {
  private static final int ENOUGH = 5;

  static Promises none() {
    return new Promises(0, 0, 0, Double.NaN, 0, 0, 0);
  }

  Promises open(double level, double probability) {
    Promises settled = close();
    return new Promises(
        settled.given, settled.kept, settled.said, Math.abs(level), probability, 0, 0);
  }

  /** A piece's deviation from what is aimed at. */
  Promises piece(double permil) {
    if (Double.isNaN(before)) {
      return this;
    }
    Promises next = new Promises(given, kept, said, before, chance, sum + permil, pieces + 1);
    return next.pieces < ENOUGH ? next : next.close();
  }

  /** The level moves for another reason: what was measured so far has to do. */
  Promises close() {
    if (Double.isNaN(before) || pieces == 0) {
      return new Promises(given, kept, said, Double.NaN, 0, 0, 0);
    }
    boolean better = Math.abs(sum / pieces) < before;
    return new Promises(given + 1, kept + (better ? 1 : 0), said + chance, Double.NaN, 0, 0, 0);
  }

  void write(Packer to) {
    to.put(given).put(kept).put(said).put(before).put(chance).put(sum).put(pieces);
  }

  static Promises read(Unpacker from) {
    return new Promises(
        from.aLong(),
        from.aLong(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.anInt());
  }
}
