package org.chordlog.station;

import org.chordlog.capture.Capture;
import org.chordlog.capture.Direction;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Announces the newest value at most ten times a second, and the last one before a pause. Used by
 * the station's thread alone.
 */
final class LiveValue {
  private static final long LEAST_NANOS = 100_000_000L;

  private final String station;
  private final Direction direction;
  private final CurrentWork current;
  private final Announcer announcer;
  private @Nullable Sample newest;
  private long announcedNanos;

  LiveValue(String station, Direction direction, CurrentWork current, Announcer announcer) {
    this.station = station;
    this.direction = direction;
    this.current = current;
    this.announcer = announcer;
  }

  void offer(Sample sample, Capture.Phase phase) {
    newest = sample;
    if (sample.monotonicNanos() - announcedNanos >= LEAST_NANOS) {
      announce(sample.monotonicNanos(), phase);
    }
  }

  /** Announces what was held back. */
  void announce(long nanos, Capture.Phase phase) {
    @Nullable Sample sample = newest;
    if (sample == null) {
      return;
    }
    newest = null;
    announcedNanos = nanos;
    WorkSnapshot work = current.work();
    @Nullable Long depthNm = work.zero() == null ? null : sample.valueNm() - work.zeroNm();
    @Nullable RadiusEstimate radius = phase == Capture.Phase.FREE ? null : radius(work, depthNm);
    announcer.announce(
        new Announcement.Live(
            station,
            sample.wallMicros(),
            direction.shownNm(sample.valueNm()),
            depthNm,
            radius == null ? null : radius.radiusMm(),
            radius != null && radius.flat(),
            phase));
    current.refreshIfOld(nanos);
  }

  private static @Nullable RadiusEstimate radius(WorkSnapshot work, @Nullable Long depthNm) {
    WorkSnapshot.@Nullable Computed computed = work.computed();
    if (depthNm == null || computed == null) {
      return null;
    }
    try {
      return computed.model().estimate(depthNm, 0, 1);
    } catch (BadInput e) {
      return null;
    }
  }
}
