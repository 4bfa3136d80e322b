package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/** Takes the mean of the first rest of each contact: while it lasts, or a short one at its end. */
final class SettledCapture implements Capture {
  private final CaptureSettings settings;
  private final Rests rests;
  private final Contacts contacts;
  private final Watchdog watchdog;
  private final TriggeredDepth triggered;
  private final ContactNotes notes;
  private final AfterTaken after;
  private final ShortRest shortRest;
  private long restingSince = Long.MAX_VALUE;
  private long takenNm;

  SettledCapture(CaptureSettings settings) {
    this.settings = settings;
    rests = new Rests(settings);
    contacts = new Contacts(settings, rests);
    watchdog = new Watchdog(settings, contacts, rests);
    triggered = new TriggeredDepth(settings, rests, contacts);
    notes = new ContactNotes(settings, contacts, rests);
    after = new AfterTaken(settings, rests);
    shortRest = new ShortRest(settings);
  }

  @Override
  public void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    Contacts.Change change = contacts.offer(sample);
    switch (change) {
      case BEGAN -> {
        notes.clear();
        shortRest.clear();
      }
      case ENDED -> ended(sample, sink);
      case NONE -> {}
    }
    triggered.saw(sample);
    inContact(sample, sink);
    watchdog.offer(sample, sink);
  }

  private void inContact(Sample sample, Consumer<CaptureOutcome> sink) {
    if (!contacts.inContact()) {
      restingSince = Long.MAX_VALUE;
      return;
    }
    notes.look();
    if (!rests.longEnough()) {
      restingSince = Long.MAX_VALUE;
    } else if (contacts.restsInContact() && !rests.leavesNewestOut()) {
      resting(sample, sink);
    }
    if (contacts.taken()) {
      after.offer(sample, sink);
    }
  }

  private void resting(Sample sample, Consumer<CaptureOutcome> sink) {
    if (lastsHalfAsLongAgain(sample.monotonicNanos())) {
      rested(sample, sink);
    } else if (!contacts.taken()) {
      shortRest.lasts(rests, rests.captured(CaptureMode.SETTLED, sample));
    }
  }

  /** So that the window is clear of the last creep into the seat. */
  private boolean lastsHalfAsLongAgain(long nanos) {
    if (isClear()) {
      return true;
    }
    if (restingSince == Long.MAX_VALUE) {
      restingSince = nanos;
      return false;
    }
    return nanos - restingSince >= settings.restNanos() / 2;
  }

  /** Few samples far apart that all agree hold no creep. */
  private boolean isClear() {
    return settings.isSlow(rests.spanNanos()) && rests.restSpreadNm() <= settings.bandNm() / 2;
  }

  private void ended(Sample sample, Consumer<CaptureOutcome> sink) {
    after.ended();
    if (!contacts.taken() && contacts.samples() > 1) {
      sink.accept(leftEarly(sample.monotonicNanos()));
    }
  }

  /** The plunger has left before the rest was as long as is waited for. */
  private CaptureOutcome leftEarly(long nanos) {
    CapturedDepth depth = shortRest.taken(nanos - contacts.sinceNanos());
    if (depth == null) {
      return notes.refusal(nanos, shortRest);
    }
    contacts.take();
    return Travel.judged(depth, contacts.pushedInNm(depth.valueNm()), settings);
  }

  private void rested(Sample sample, Consumer<CaptureOutcome> sink) {
    long mean = rests.meanNm();
    if (contacts.taken() && tooDeepForTheSameContact(mean)) {
      contacts.relearn(takenNm, sample);
    }
    if (!contacts.taken()) {
      CapturedDepth depth = rests.captured(CaptureMode.SETTLED, sample);
      CaptureOutcome outcome = Travel.judged(depth, contacts.pushedInNm(depth.valueNm()), settings);
      contacts.take();
      takenNm = mean;
      after.ended();
      if (outcome instanceof Captured) {
        after.took(depth);
      }
      sink.accept(outcome);
    }
  }

  private void took(CapturedDepth depth) {
    contacts.take();
    takenNm = depth.valueNm();
    after.took(depth);
  }

  /** A bridge that is standing can't let the plunger in by half as much again. */
  private boolean tooDeepForTheSameContact(long meanNm) {
    long taken = contacts.pushedInNm(takenNm);
    return contacts.pushedInNm(meanNm) > taken + Math.max(taken / 2, settings.contactNm());
  }

  @Override
  public void trigger(long monotonicNanos, Consumer<CaptureOutcome> asker) {
    triggered.ask(
        monotonicNanos,
        outcome -> {
          if (outcome instanceof Captured captured) {
            took(captured.depth());
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
  }

  @Override
  public void elapsed(long monotonicNanos) {
    triggered.elapsed(monotonicNanos);
  }

  @Override
  public void reset() {
    contacts.reset();
    restingSince = Long.MAX_VALUE;
    after.ended();
    shortRest.clear();
    triggered.forget();
  }

  @Override
  public long remembers() {
    return shortRest.lastSequence();
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
