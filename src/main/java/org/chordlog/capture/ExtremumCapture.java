package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/** Takes the extreme of a contact in which the bridge was rocked, when the plunger has left. */
final class ExtremumCapture implements Capture {
  private final CaptureSettings settings;
  private final Contacts contacts;
  private final Watchdog watchdog;
  private final TriggeredDepth triggered;
  private final Rocking rocking;

  ExtremumCapture(CaptureSettings settings) {
    this.settings = settings;
    RestWindow window = new RestWindow(settings);
    contacts = new Contacts(settings, window);
    watchdog = new Watchdog(settings, contacts);
    triggered = new TriggeredDepth(settings, window, contacts);
    rocking = new Rocking(settings);
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    Contacts.Change change = contacts.offer(sample);
    triggered.saw(sample);
    if (change == Contacts.Change.BEGAN) {
      rocking.clear();
    }
    if (contacts.inContact()) {
      rocking.add(sample, contacts.pushedInNm(sample.valueNm()));
    }
    if (change == Contacts.Change.ENDED && !contacts.taken() && contacts.samples() > 1) {
      sink.accept(outcome(sample));
    }
    watchdog.offer(sample, sink);
  }

  private CaptureOutcome outcome(Sample left) {
    long nanos = left.monotonicNanos();
    if (contacts.samples() < settings.leastSamples()
        || nanos - contacts.sinceNanos() < settings.restNanos()) {
      return new Rejected(Reason.TOO_SHORT, nanos, "left before it could be rocked");
    }
    Rocking.@Nullable Extremum extremum = rocking.extremum();
    if (extremum == null) {
      return new Rejected(Reason.MOVED, nanos, "no turning point");
    }
    CapturedDepth depth =
        new CapturedDepth(
            CaptureMode.EXTREMUM,
            extremum.valueNm(),
            extremum.scatterNm(),
            extremum.samples(),
            rocking.firstSequence(),
            rocking.lastSequence(),
            nanos,
            left.wallMicros());
    return Travel.judged(depth, contacts.pushedInNm(depth.valueNm()), settings);
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> sink) {
    CaptureOutcome outcome = triggered.at(monotonicNanos);
    if (outcome instanceof Captured) {
      contacts.take();
    }
    sink.accept(outcome);
  }

  @Override
  public void reset() {
    contacts.reset();
    triggered.forget();
  }

  @Override
  public Phase phase() {
    return contacts.phase();
  }
}
