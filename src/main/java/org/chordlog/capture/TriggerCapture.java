package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/** Takes a depth only when asked: by the indicator's button, or from outside. */
final class TriggerCapture implements Capture {
  private final boolean everyFrame;
  private final Rests rests;
  private final Contacts contacts;
  private final TriggeredDepth triggered;

  TriggerCapture(CaptureSettings settings) {
    everyFrame = settings.everyFrame();
    rests = new Rests(settings);
    contacts = new Contacts(settings, rests);
    triggered = new TriggeredDepth(settings, rests, contacts);
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    if (everyFrame || sample.button()) {
      sink.accept(triggered.of(sample));
    }
    if (!everyFrame) {
      contacts.offer(sample);
      triggered.saw(sample);
    }
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> asker) {
    triggered.ask(monotonicNanos, asker);
  }

  @Override
  public void freeAirIs(long levelNm) {
    contacts.freeAirIs(levelNm);
  }

  @Override
  public void meanMayErrBy(long standardErrorNm) {
    rests.meanMayErrBy(standardErrorNm);
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
