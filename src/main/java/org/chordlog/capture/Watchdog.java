package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Sample;

/** Says, once a contact, that no rest comes, or that the value stands still as no hand can. */
final class Watchdog {
  private final CaptureSettings settings;
  private final Contacts contacts;
  private final boolean awaitsRest;
  private long contact = Long.MIN_VALUE;
  private boolean restMissed;
  private boolean stuck;
  private long valueNm;
  private long changedNanos;

  Watchdog(CaptureSettings settings, Contacts contacts) {
    this.settings = settings;
    this.contacts = contacts;
    awaitsRest = settings.mode() == CaptureMode.SETTLED;
  }

  void offer(Sample sample, Consumer<CaptureOutcome> sink) {
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

  private void startOver(Sample sample) {
    contact = contacts.inContact() ? contacts.sinceNanos() : Long.MIN_VALUE;
    restMissed = false;
    stuck = false;
    valueNm = sample.valueNm();
    changedNanos = sample.monotonicNanos();
  }
}
