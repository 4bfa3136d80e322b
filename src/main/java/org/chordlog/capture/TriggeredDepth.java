package org.chordlog.capture;

import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/** A depth taken because somebody asked for it, from what arrived just before. */
final class TriggeredDepth {
  private final CaptureSettings settings;
  private final RestWindow window;
  private final Contacts contacts;
  private @Nullable Sample last;
  private @Nullable Long takenNanos;

  TriggeredDepth(CaptureSettings settings, RestWindow window, Contacts contacts) {
    this.settings = settings;
    this.window = window;
    this.contacts = contacts;
  }

  void saw(Sample sample) {
    last = sample;
  }

  void forget() {
    last = null;
  }

  /** The mean of the rest that lasts at that time. */
  CaptureOutcome at(long nanos) {
    if (repeated(nanos)) {
      return new Rejected(Reason.REPEATED, nanos, "too soon after the last");
    }
    Sample newest = last;
    if (newest == null || nanos - newest.monotonicNanos() > contacts.gapNanos()) {
      return new Rejected(Reason.GAP, nanos, "no value has come lately");
    }
    if (contacts.inFreeAir()) {
      return new Rejected(Reason.FREE_AIR, nanos, "the plunger hangs free");
    }
    if (!window.atRestOnRequest()) {
      return new Rejected(Reason.MOVED, nanos, "not at rest for the least length");
    }
    return taken(window.captured(CaptureMode.TRIGGER, newest), nanos);
  }

  /** The value of that one frame, which the indicator's button sent. */
  CaptureOutcome of(Sample sample) {
    long nanos = sample.monotonicNanos();
    if (repeated(nanos)) {
      return new Rejected(Reason.REPEATED, nanos, "too soon after the last");
    }
    return taken(
        new CapturedDepth(
            CaptureMode.TRIGGER,
            sample.valueNm(),
            0,
            1,
            sample.sequence(),
            sample.sequence(),
            nanos,
            sample.wallMicros()),
        nanos);
  }

  private boolean repeated(long nanos) {
    return takenNanos != null && nanos - takenNanos < settings.leastIntervalNanos();
  }

  private CaptureOutcome taken(CapturedDepth depth, long nanos) {
    CaptureOutcome outcome = Travel.judged(depth, contacts.pushedInNm(depth.valueNm()), settings);
    if (outcome instanceof Captured) {
      takenNanos = nanos;
    }
    return outcome;
  }
}
