package org.chordlog.stats.drift;

import org.chordlog.measure.JobEvent;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * What a stretch of pieces began with, before which piece; {@code amount} of a correction where it
 * was recorded, in the machine's own unit.
 */
record Start(Cause cause, MachinePlace place, String lot, @Nullable Double amount) {
  enum Cause {
    FIRST_PIECE,
    CORRECTION,
    SET_UP,
    LOT,
    JUMP;

    /** Whether the rollers were moved. */
    boolean set() {
      return this == CORRECTION || this == SET_UP;
    }
  }

  static final Start FIRST = new Start(Cause.FIRST_PIECE, new MachinePlace(1, 0), "", null);

  /** Null for an event that moves no level. */
  static @Nullable Start of(JobEvent event, long piece) {
    MachinePlace place = new MachinePlace(piece, event.atMicros());
    return switch (event.kind()) {
      case CORRECTION -> new Start(Cause.CORRECTION, place, "", amount(event));
      case SET_UP -> new Start(Cause.SET_UP, place, "", null);
      case MATERIAL_LOT -> new Start(Cause.LOT, place, event.materialLot(), null);
      default -> null;
    };
  }

  private static @Nullable Double amount(JobEvent event) {
    Double before = event.settingBefore();
    Double after = event.settingAfter();
    return before == null || after == null ? null : (Double) (after - before);
  }

  void pack(Packer packer) {
    packer.put(cause.name());
    place.pack(packer);
    packer.put(lot).put(amount != null).put(amount == null ? 0 : amount);
  }

  static Start unpack(Unpacker from) {
    Cause cause = Cause.valueOf(from.text());
    MachinePlace place = MachinePlace.unpack(from);
    String lot = from.text();
    boolean recorded = from.aBoolean();
    double amount = from.aDouble();
    return new Start(cause, place, lot, recorded ? (Double) amount : null);
  }
}
