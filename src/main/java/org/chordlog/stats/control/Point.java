package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * What a chart point stands for: the mean, range and standard deviation of {@code size} values
 * (spread NaN below two), or of the excluded values if all of them are.
 */
public record Point(
    double mean,
    double range,
    double deviation,
    int size,
    long firstReadingId,
    long lastReadingId,
    int piece,
    String position,
    long atMicros,
    boolean excluded,
    String reason) {
  public static Point single(Observation seen, String exclusion) {
    return new Point(
        seen.value(),
        Double.NaN,
        Double.NaN,
        1,
        seen.readingId(),
        seen.readingId(),
        seen.piece(),
        seen.position(),
        seen.atMicros(),
        !exclusion.isEmpty(),
        exclusion);
  }

  void pack(Packer packer) {
    packer.put(mean).put(range).put(deviation).put(size).put(firstReadingId).put(lastReadingId);
    packer.put(piece).put(position).put(atMicros).put(excluded).put(reason);
  }

  static Point unpack(Unpacker from) {
    return new Point(
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.anInt(),
        from.aLong(),
        from.aLong(),
        from.anInt(),
        from.text().intern(),
        from.aLong(),
        from.aBoolean(),
        from.text());
  }
}
