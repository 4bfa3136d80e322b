package org.chordlog.web;

import org.chordlog.measure.JobEvent;
import org.chordlog.web.http.Times;
import org.jspecify.annotations.Nullable;

/** Something that happened between two readings of a job. */
record JobEventView(
    long id,
    long jobId,
    String machine,
    JobEvent.Kind kind,
    long afterReadingId,
    String at,
    @Nullable Double settingBefore,
    @Nullable Double settingAfter,
    String materialLot,
    String note,
    String by,
    boolean startsPhase) {
  static JobEventView of(JobEvent e) {
    return new JobEventView(
        e.id(),
        e.jobId(),
        e.machine(),
        e.kind(),
        e.afterReadingId(),
        Times.iso(e.atMicros()),
        e.settingBefore(),
        e.settingAfter(),
        e.materialLot(),
        e.note(),
        e.by(),
        e.startsPhase());
  }
}
