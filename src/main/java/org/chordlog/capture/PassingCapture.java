package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * Takes no depth itself: tells only whether a section is under the bridge, while its pieces are
 * told from one another and measured along their length elsewhere.
 */
final class PassingCapture implements Capture {
  private final Contacts contacts;

  PassingCapture(CaptureSettings settings) {
    contacts = new Contacts(settings, new Rests(settings));
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    Contacts.Change unused = contacts.offer(sample);
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> asker) {
    asker.accept(
        new CaptureOutcome.Rejected(
            CaptureOutcome.Reason.RUNS_THROUGH,
            monotonicNanos,
            "pieces are measured as they run through"));
  }

  @Override
  public void freeAirIs(long levelNm) {
    contacts.freeAirIs(levelNm);
  }

  @Override
  public void meanMayErrBy(long standardErrorNm) {
    // takes no mean of a rest
  }

  @Override
  public void elapsed(long monotonicNanos) {
    // waits for nothing
  }

  @Override
  public void reset() {
    contacts.reset();
  }

  @Override
  public @Nullable Long freeAirNm() {
    return contacts.freeAirNm();
  }

  @Override
  public Phase phase() {
    return contacts.phase() == Phase.FREE ? Phase.FREE : Phase.MOVING;
  }
}
