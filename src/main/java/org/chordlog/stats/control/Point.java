package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * What a chart point is made of: the mean, range and standard deviation of {@code size} values
 * (spread NaN below two), or of the excluded values if all of them are.
 */
public record Point(
    double mean,
    double range,
    double deviation,
    int size,
    PointReadings readings,
    PointExclusion exclusion) {
  /** A point of one reading; {@code exclusion} is why it does not count, empty where it does. */
  public static Point single(Observation seen, String exclusion) {
    return new Point(
        seen.value(),
        Double.NaN,
        Double.NaN,
        1,
        PointReadings.of(seen),
        new PointExclusion(!exclusion.isEmpty(), exclusion));
  }

  public long firstReadingId() {
    return readings.firstReadingId();
  }

  public long lastReadingId() {
    return readings.lastReadingId();
  }

  public int piece() {
    return readings.piece();
  }

  public String position() {
    return readings.position();
  }

  public long atMicros() {
    return readings.atMicros();
  }

  public boolean excluded() {
    return exclusion.excluded();
  }

  public String reason() {
    return exclusion.reason();
  }

  void pack(Packer packer) {
    packer.put(mean).put(range).put(deviation).put(size).put(firstReadingId()).put(lastReadingId());
    packer.put(piece()).put(position()).put(atMicros()).put(excluded()).put(reason());
  }

  static Point unpack(Unpacker from) {
    return new Point(
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.anInt(),
        new PointReadings(
            from.aLong(), from.aLong(), from.anInt(), from.text().intern(), from.aLong()),
        new PointExclusion(from.aBoolean(), from.text()));
  }
}
