package org.chordlog.station;

import org.chordlog.measure.JobEvent;
import org.jspecify.annotations.Nullable;

/**
 * What somebody says has happened in a job. The settings are those of the rollers before and after
 * a correction, in the machine's own unit. {@code afterReadingId}: the last reading of the job
 * before it, 0 if it was before the first; null: it happened just now. {@code replaces}: the event
 * that was recorded wrongly and is taken back for this one, {@code note} says why; null: none.
 */
public record Happening(
    JobEvent.Kind kind,
    @Nullable Double settingBefore,
    @Nullable Double settingAfter,
    String materialLot,
    String note,
    @Nullable Long afterReadingId,
    @Nullable Long replaces) {
  static Happening of(JobEvent.Kind kind, String note) {
    return new Happening(kind, null, null, "", note, null, null);
  }
}
