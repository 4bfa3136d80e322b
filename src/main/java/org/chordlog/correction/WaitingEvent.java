package org.chordlog.correction;

import org.chordlog.measure.JobEvent;
import org.chordlog.measure.JobEvent.Kind;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * An event of a job whose first reading is still to come; {@code passed}: another was measured on
 * since.
 */
record WaitingEvent(
    long job,
    Kind kind,
    String lot,
    @Nullable Double before,
    @Nullable Double after,
    boolean passed) {
  static WaitingEvent of(JobEvent event) {
    return new WaitingEvent(
        event.jobId(),
        event.kind(),
        event.materialLot(),
        event.settingBefore(),
        event.settingAfter(),
        false);
  }

  WaitingEvent passedBy() {
    return new WaitingEvent(job, kind, lot, before, after, true);
  }

  /** The rollers stand for that job, and not for the present one. */
  boolean setsUp() {
    return movesRollers() && !passed;
  }

  boolean movesRollers() {
    return kind == Kind.SET_UP || kind == Kind.CORRECTION;
  }

  void write(Packer to) {
    to.put(job).put(kind.name()).put(lot);
    Packing.put(to, before);
    Packing.put(to, after);
    to.put(passed);
  }

  static WaitingEvent read(Unpacker from) {
    return new WaitingEvent(
        from.aLong(),
        Kind.valueOf(from.text()),
        from.text(),
        Packing.nullable(from),
        Packing.nullable(from),
        from.aBoolean());
  }
}
