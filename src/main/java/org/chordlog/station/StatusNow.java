package org.chordlog.station;

import org.chordlog.measure.Bridge;
import org.chordlog.measure.Job;
import org.jspecify.annotations.Nullable;

/** What a station tells of itself, put together from its parts as they are now. Any thread. */
record StatusNow(StationParts parts, ValueEvents values) {
  StationStatus status() {
    LinkWatch.Now now = parts.link.now();
    WorkSnapshot work = parts.current.work();
    Place place = parts.current.place();
    @Nullable Job job = work.job();
    @Nullable Bridge bridge = work.bridge();
    return new StationStatus(
        parts.settings.name(),
        parts.settings.machine(),
        now.state(),
        now.message(),
        parts.settings.link().target(),
        now.sinceMicros(),
        values.indicatorState(),
        parts.counters.snapshot(parts.trace.dropped()),
        job == null ? null : job.id(),
        new StationStatus.PlaceNow(
            place.piece(),
            place.position(),
            place.pass(),
            parts.intake.onMasters(),
            parts.study.now(),
            work.shift().person()),
        bridge == null ? null : bridge.id(),
        work.zero() == null ? null : work.zero().id(),
        work.zeroOfOtherBridge() || work.zeroTooOld(parts.settings.zero(), parts.clock.micros()),
        parts.guard.zeroMoved(work.zero()),
        parts.guard.inDoubt(work.zero()),
        parts.intake.question(),
        parts.lengthLink == null ? null : parts.lengthLink.now());
  }
}
