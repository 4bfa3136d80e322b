package org.chordlog.station;

import java.util.Set;
import org.chordlog.capture.Capture;
import org.chordlog.capture.Direction;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Length;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Announces the newest value at most ten times a second, and the last one before a pause; twice a
 * second where it stands in free air or on a piece that is measured, so that pages draw little
 * between pieces. Used by the station's thread alone.
 */
final class LiveValue {
  private static final long LEAST_NANOS = 100_000_000L;
  private static final long STANDING_NANOS = 500_000_000L;

  /** Nothing is to be seen of what moves less, as free air that is still free air. */
  private static final int STEPS = 4;

  private static final Set<Capture.Phase> AT_EASE = Set.of(Capture.Phase.FREE, Capture.Phase.TAKEN);

  private final String station;
  private final Direction direction;
  private final CurrentWork current;
  private final Announcer announcer;
  private final long standsNm;
  private final ZeroRule zeroRule;
  private @Nullable Sample newest;
  private long announcedNanos;
  private long announcedNm;
  private Capture.@Nullable Phase announcedPhase;

  LiveValue(StationSettings settings, CurrentWork current, Announcer announcer) {
    station = settings.name();
    direction = settings.counts();
    zeroRule = settings.zero();
    standsNm = STEPS * Length.nm(settings.indicator().resolutionMm());
    this.current = current;
    this.announcer = announcer;
  }

  void offer(Sample sample, Capture.Phase phase) {
    newest = sample;
    long nanos = sample.monotonicNanos();
    if (nanos - announcedNanos >= (stands(sample, phase) ? STANDING_NANOS : LEAST_NANOS)) {
      announce(nanos, phase);
    }
  }

  /** By its depth, which a new zero moves too. */
  private boolean stands(Sample sample, Capture.Phase phase) {
    return phase == announcedPhase
        && AT_EASE.contains(phase)
        && Math.abs(depthNm(sample) - announcedNm) <= standsNm;
  }

  private long depthNm(Sample sample) {
    return sample.valueNm() - current.work().zeroNm();
  }

  /** Announces what was held back. */
  void announce(long nanos, Capture.Phase phase) {
    @Nullable Sample sample = newest;
    if (sample == null) {
      return;
    }
    newest = null;
    announcedNanos = nanos;
    announcedNm = depthNm(sample);
    announcedPhase = phase;
    WorkSnapshot work = current.work();
    @Nullable Long depthNm = work.hasZero(zeroRule) ? announcedNm : null;
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
