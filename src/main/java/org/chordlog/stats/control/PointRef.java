package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** Which point of a chart: its number from 1, its last reading, that one's piece and time. */
public record PointRef(long number, long lastReadingId, int piece, long atMicros) {
  static PointRef of(long number, Point point) {
    return new PointRef(number, point.lastReadingId(), point.piece(), point.atMicros());
  }

  void pack(Packer packer) {
    packer.put(number).put(lastReadingId).put(piece).put(atMicros);
  }

  static PointRef unpack(Unpacker from) {
    return new PointRef(from.aLong(), from.aLong(), from.anInt(), from.aLong());
  }
}
