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
  private final Rests rests;
  private final Contacts contacts;
  private final Watchdog watchdog;
  private final TriggeredDepth triggered;
  private final Rocking rocking;

  ExtremumCapture(CaptureSettings settings) {
    this.settings = settings;
    rests = new Rests(settings);
    contacts = new Contacts(settings, rests);
    watchdog = new Watchdog(settings, contacts, rests);
    triggered = new TriggeredDepth(settings, rests, contacts);
    rocking = new Rocking(settings);
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    Contacts.Change change = contacts.offer(sample);
    triggered.saw(sample);
    if (change == Contacts.Change.BEGAN) {
      rocking.trace().clear();
    }
    if (contacts.inContact()) {
      rocking.trace().add(sample, contacts.pushedInNm(sample.valueNm()));
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
      return new Rejected(Reason.MOVED, nanos, "no turning points that agree");
    }
    CapturedDepth depth =
        new CapturedDepth(
            CaptureMode.EXTREMUM,
            extremum.valueNm(),
            extremum.scatterNm(),
            extremum.samples(),
            new CapturedDepth.SampleRange(
                rocking.trace().firstSequence(), rocking.trace().lastSequence()),
            new CapturedDepth.Moment(nanos, left.wallMicros()));
    return Travel.judged(depth, contacts.pushedInNm(depth.valueNm()), settings);
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> asker) {
    triggered.ask(
        monotonicNanos,
        outcome -> {
          if (outcome instanceof Captured) {
            contacts.take();
          }
          asker.accept(outcome);
        });
  }

  @Override
  public void freeAirIs(long levelNm) {
    contacts.freeAirIs(levelNm);
  }

  @Override
  public void meanMayErrBy(long standardErrorNm) {
    rests.meanMayErrBy(standardErrorNm);
    rocking.meanMayErrBy(standardErrorNm);
  }

  @Override
  public void elapsed(long monotonicNanos) {
    triggered.elapsed(monotonicNanos);
  }

  @Override
  public void reset() {
    contacts.reset();
    triggered.forget();
  }

  @Override
  public @Nullable Long freeAirNm() {
    return contacts.freeAirNm();
  }

  @Override
  public Phase phase() {
    return contacts.phase();
  }
}
