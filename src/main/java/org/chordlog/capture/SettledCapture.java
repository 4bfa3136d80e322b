package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;

/**
 * Takes the mean of the first rest of each contact; armed again by the plunger's leaving. Until
 * free air was seen once, nothing is taken: what it stands on may have been taken before.
 */
final class SettledCapture implements Capture {
  private enum State {
    UNARMED,
    FREE,
    CONTACT,
    TAKEN,
    LEAVING
  }

  private final CaptureSettings settings;
  private final RestWindow window;
  private final FreeAir freeAir;
  private final Arrivals arrivals = new Arrivals();
  private State state = State.UNARMED;
  private int contactSamples;
  private long contactSince;
  private long takenPushedIn;
  private long leastPushedIn;

  SettledCapture(CaptureSettings settings) {
    this.settings = settings;
    window = new RestWindow(settings);
    freeAir = new FreeAir(settings);
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    if (arrivals.gapBefore(sample.monotonicNanos())) {
      window.clear();
    }
    window.add(sample);
    if (freeAir.touches(sample.valueNm())) {
      touching(sample, sink);
    } else {
      free(sample, sink);
    }
  }

  private void free(Sample sample, Consumer<CaptureOutcome> sink) {
    if (state == State.CONTACT && contactSamples > 1) {
      sink.accept(refusal(sample));
    }
    if (window.atRest()) {
      freeAir.restedAt(window.meanNm());
    }
    if (freeAir.known()) {
      state = State.FREE;
    }
  }

  private Rejected refusal(Sample sample) {
    long nanos = sample.monotonicNanos();
    boolean brief =
        nanos - contactSince < settings.restNanos() || contactSamples < settings.leastSamples();
    return brief
        ? new Rejected(Reason.TOO_SHORT, nanos, "left before a rest of the least length")
        : new Rejected(Reason.MOVED, nanos, "never within the band for the least length");
  }

  private void touching(Sample sample, Consumer<CaptureOutcome> sink) {
    long pushedIn = freeAir.pushedInNm(sample.valueNm());
    switch (state) {
      case UNARMED -> {}
      case FREE -> begin(sample);
      case CONTACT -> settle(sample, pushedIn, sink);
      case TAKEN -> watchForLeaving(pushedIn);
      case LEAVING -> watchForReturn(sample, pushedIn);
    }
  }

  private void begin(Sample sample) {
    state = State.CONTACT;
    contactSamples = 1;
    contactSince = sample.monotonicNanos();
  }

  private void settle(Sample sample, long pushedIn, Consumer<CaptureOutcome> sink) {
    contactSamples++;
    if (window.atRest() && window.count() <= contactSamples) {
      state = State.TAKEN;
      takenPushedIn = pushedIn;
      sink.accept(new Captured(taken(sample)));
    }
  }

  private CapturedDepth taken(Sample last) {
    return new CapturedDepth(
        CaptureMode.SETTLED,
        window.meanNm(),
        window.standardDeviationNm(),
        window.count(),
        window.firstSequence(),
        last.sequence(),
        last.monotonicNanos(),
        last.wallMicros());
  }

  private void watchForLeaving(long pushedIn) {
    if (pushedIn < takenPushedIn / 2) {
      state = State.LEAVING;
      leastPushedIn = pushedIn;
    }
  }

  /** Lifted only half way and set down again: a new contact without free air in between. */
  private void watchForReturn(Sample sample, long pushedIn) {
    leastPushedIn = Math.min(leastPushedIn, pushedIn);
    if (pushedIn > leastPushedIn + takenPushedIn / 4) {
      begin(sample);
    }
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> sink) {
    sink.accept(new Rejected(Reason.MOVED, monotonicNanos, "not at rest"));
  }

  @Override
  public void reset() {
    window.clear();
    arrivals.forgetLast();
    if (state != State.CONTACT) {
      state = State.UNARMED;
    }
  }

  @Override
  public Phase phase() {
    return switch (state) {
      case FREE -> Phase.FREE;
      case CONTACT -> window.still() ? Phase.RESTING : Phase.MOVING;
      case TAKEN -> Phase.TAKEN;
      case UNARMED, LEAVING -> Phase.MOVING;
    };
  }
}
