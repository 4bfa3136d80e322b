package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sample;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** Says, once a contact, that no rest comes, or that the value stands still as no hand can. */
final class Watchdog {
  private final CaptureSettings settings;
  private final Contacts contacts;
  private final Rests rests;
  private final boolean awaitsRest;
  private @Nullable Long restlessSince;
  private long contact = Long.MIN_VALUE;
  private boolean restMissed;
  private boolean stuck;
  private long valueNm;
  private long changedNanos;

  Watchdog(CaptureSettings settings, Contacts contacts, Rests rests) {
    this.settings = settings;
    this.contacts = contacts;
    this.rests = rests;
    awaitsRest = settings.mode() == CaptureMode.SETTLED;
  }

  void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    armed(sample, sink);
    if (!contacts.inContact() || contacts.sinceNanos() != contact) {
      startOver(sample);
      return;
    }
    long now = sample.monotonicNanos();
    if (sample.valueNm() != valueNm) {
      valueNm = sample.valueNm();
      changedNanos = now;
    }
    if (awaitsRest && !restMissed && !contacts.taken() && now - contact > settings.timeoutNanos()) {
      restMissed = true;
      sink.accept(new Rejected(Reason.MOVED, now, "in contact, but no rest so far"));
    }
    if (!stuck && now - changedNanos > settings.stuckNanos()) {
      stuck = true;
      sink.accept(new Rejected(Reason.STUCK, now, "the value has not changed by one step"));
    }
  }

  /** Says, again after each time-out, that free air was never seen at rest. */
  private void armed(Sample sample, Consumer<CaptureOutcome> sink) {
    long now = sample.monotonicNanos();
    if (contacts.freeAirKnown()) {
      restlessSince = null;
    } else if (restlessSince == null) {
      restlessSince = now;
    } else if (now - restlessSince > settings.timeoutNanos()) {
      restlessSince = now;
      Sentence detail =
          Sentence.of(
              "no rest so far, not even in free air, so that nothing can be taken; the value"
                  + " swings by %s: state capture.freeAirMm and a wider capture.bandMm",
              Quantity.uncertainty(Length.mm(rests.spreadNm())));
      sink.accept(new Rejected(Reason.VIBRATES, now, detail));
    }
  }

  private void startOver(Sample sample) {
    contact = contacts.inContact() ? contacts.sinceNanos() : Long.MIN_VALUE;
    restMissed = false;
    stuck = false;
    valueNm = sample.valueNm();
    changedNanos = sample.monotonicNanos();
  }
}
