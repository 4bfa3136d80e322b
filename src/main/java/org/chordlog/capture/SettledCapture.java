package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;

/** Takes the mean of the first rest of each contact. */
final class SettledCapture implements Capture {
  private final CaptureSettings settings;
  private final RestWindow window;
  private final Contacts contacts;
  private final Watchdog watchdog;
  private final TriggeredDepth triggered;
  private long restingSince = Long.MAX_VALUE;
  private long takenNm;

  SettledCapture(CaptureSettings settings) {
    this.settings = settings;
    window = new RestWindow(settings);
    contacts = new Contacts(settings, window);
    watchdog = new Watchdog(settings, contacts);
    triggered = new TriggeredDepth(settings, window, contacts);
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    Contacts.Change change = contacts.offer(sample);
    triggered.saw(sample);
    if (change == Contacts.Change.ENDED) {
      ended(sample, sink);
    }
    if (!contacts.inContact() || !window.longEnough()) {
      restingSince = Long.MAX_VALUE;
    } else if (contacts.restsInContact() && lastsHalfAsLongAgain(sample.monotonicNanos())) {
      rested(sample, sink);
    }
    watchdog.offer(sample, sink);
  }

  /** So that the window is clear of the last creep into the seat. */
  private boolean lastsHalfAsLongAgain(long nanos) {
    if (restingSince == Long.MAX_VALUE) {
      restingSince = nanos;
      return false;
    }
    return nanos - restingSince >= settings.restNanos() / 2;
  }

  private void ended(Sample sample, Consumer<CaptureOutcome> sink) {
    if (!contacts.taken() && contacts.samples() > 1) {
      sink.accept(refusal(sample.monotonicNanos()));
    }
  }

  private Rejected refusal(long nanos) {
    boolean brief =
        nanos - contacts.sinceNanos() < settings.restNanos()
            || contacts.samples() < settings.leastSamples();
    return brief
        ? new Rejected(Reason.TOO_SHORT, nanos, "left before a rest of the least length")
        : new Rejected(Reason.MOVED, nanos, "never within the band for the least length");
  }

  private void rested(Sample sample, Consumer<CaptureOutcome> sink) {
    long mean = window.meanNm();
    if (contacts.taken() && tooDeepForTheSameContact(mean)) {
      contacts.relearn(takenNm, sample);
    }
    if (!contacts.taken()) {
      contacts.take();
      takenNm = mean;
      sink.accept(judged(window.captured(CaptureMode.SETTLED, sample)));
    }
  }

  /** A bridge that stands can't let the plunger in by half as much again. */
  private boolean tooDeepForTheSameContact(long meanNm) {
    long taken = contacts.pushedInNm(takenNm);
    return contacts.pushedInNm(meanNm) > taken + Math.max(taken / 2, settings.contactNm());
  }

  private CaptureOutcome judged(CapturedDepth depth) {
    return Travel.judged(depth, contacts.pushedInNm(depth.valueNm()), settings);
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> sink) {
    CaptureOutcome outcome = triggered.at(monotonicNanos);
    if (outcome instanceof Captured captured) {
      contacts.take();
      takenNm = captured.depth().valueNm();
    }
    sink.accept(outcome);
  }

  @Override
  public void reset() {
    contacts.reset();
    restingSince = Long.MAX_VALUE;
    triggered.forget();
  }

  @Override
  public Phase phase() {
    return contacts.phase();
  }
}
