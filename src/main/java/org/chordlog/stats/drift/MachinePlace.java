package org.chordlog.stats.drift;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** A piece by its number among all of a machine, and when it was measured (UTC, microseconds). */
public record MachinePlace(long piece, long atMicros) {
  void pack(Packer packer) {
    packer.put(piece).put(atMicros);
  }

  static MachinePlace unpack(Unpacker from) {
    return new MachinePlace(from.aLong(), from.aLong());
  }
}
