package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/** A depth taken because somebody asked for it: the rest that lasts then, or else the next one. */
final class TriggeredDepth {
  private final CaptureSettings settings;
  private final Rests window;
  private final Contacts contacts;
  private @Nullable Sample last;
  private @Nullable Long takenNanos;
  private @Nullable Consumer<CaptureOutcome> waiting;
  private long askedNanos;
  private boolean askedOnPiece;

  TriggeredDepth(CaptureSettings settings, Rests window, Contacts contacts) {
    this.settings = settings;
    this.window = window;
    this.contacts = contacts;
  }

  /** Answers a request that waits, when this sample completes a rest. */
  void saw(Sample sample) {
    last = sample;
    refuseIfLifted(sample.monotonicNanos());
    Consumer<CaptureOutcome> asker = waiting;
    if (asker == null || !restsOnPiece()) {
      elapsed(sample.monotonicNanos());
      return;
    }
    waiting = null;
    asker.accept(taken(window.captured(CaptureMode.TRIGGER, sample), sample.monotonicNanos()));
  }

  /** What was asked for on one piece is never answered by the next. */
  private void refuseIfLifted(long nanos) {
    Consumer<CaptureOutcome> asker = waiting;
    if (asker != null && askedOnPiece && contacts.inFreeAir()) {
      waiting = null;
      asker.accept(new Rejected(Reason.TOO_SHORT, nanos, "lifted before it came to rest"));
    }
  }

  private boolean restsOnPiece() {
    return !contacts.inFreeAir() && window.atRestOnRequest();
  }

  /** Time has passed; a request that waited too long is refused. */
  void elapsed(long nanos) {
    Consumer<CaptureOutcome> asker = waiting;
    if (asker != null && nanos - askedNanos > settings.timeoutNanos()) {
      waiting = null;
      asker.accept(missed(nanos));
    }
  }

  private Rejected missed(long nanos) {
    Sample newest = last;
    String within = " within " + Math.round(settings.timeoutNanos() / 1e9) + " s";
    if (newest == null || nanos - newest.monotonicNanos() > contacts.gapNanos()) {
      return new Rejected(Reason.GAP, nanos, "no value has come lately");
    }
    return contacts.inFreeAir()
        ? new Rejected(Reason.FREE_AIR, nanos, "the bridge was not set down" + within)
        : new Rejected(Reason.MOVED, nanos, "no rest of the least length" + within);
  }

  void forget() {
    last = null;
  }

  /** Answers at once where a rest lasts or no value comes; else when it has come or is overdue. */
  void ask(long nanos, Consumer<CaptureOutcome> asker) {
    if (waiting != null || repeated(nanos)) {
      asker.accept(new Rejected(Reason.REPEATED, nanos, "too soon after the last"));
      return;
    }
    Sample newest = last;
    if (newest == null || nanos - newest.monotonicNanos() > contacts.gapNanos()) {
      asker.accept(new Rejected(Reason.GAP, nanos, "no value has come lately"));
      return;
    }
    if (restsOnPiece()) {
      asker.accept(taken(window.captured(CaptureMode.TRIGGER, newest), nanos));
      return;
    }
    waiting = asker;
    askedNanos = nanos;
    askedOnPiece = !contacts.inFreeAir();
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
            new CapturedDepth.SampleRange(sample.sequence(), sample.sequence()),
            new CapturedDepth.Moment(nanos, sample.wallMicros())),
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
