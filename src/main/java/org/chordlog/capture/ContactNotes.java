package org.chordlog.capture;

import java.util.Locale;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;

/** What was seen of rests in one contact, to say truly why it gave no depth. */
final class ContactNotes {
  private final CaptureSettings settings;
  private final Contacts contacts;
  private final Rests rests;
  private long longestNanos;
  private int mostSamples;
  private long leastSpreadNm = Long.MAX_VALUE;
  private double noiseNm;

  ContactNotes(CaptureSettings settings, Contacts contacts, Rests rests) {
    this.settings = settings;
    this.contacts = contacts;
    this.rests = rests;
  }

  void clear() {
    longestNanos = 0;
    mostSamples = 0;
    leastSpreadNm = Long.MAX_VALUE;
  }

  /** After each sample of the contact. */
  void look() {
    if (rests.still()) {
      longestNanos = Math.max(longestNanos, rests.spanNanos());
      mostSamples = Math.max(mostSamples, Math.min(rests.count(), contacts.samples()));
    } else if (rests.longEnough() && rests.spreadNm() < leastSpreadNm) {
      leastSpreadNm = rests.spreadNm();
      noiseNm = rests.noiseNm();
    }
  }

  Rejected refusal(long nanos) {
    long contactNanos = nanos - contacts.sinceNanos();
    if (restedForAWhile() || contactNanos < 2 * needNanos()) {
      return new Rejected(Reason.TOO_SHORT, nanos, tooShort(contactNanos));
    }
    return leastSpreadNm < Long.MAX_VALUE && noiseNm > settings.usualNoiseNm()
        ? new Rejected(Reason.VIBRATES, nanos, vibrates())
        : new Rejected(Reason.MOVED, nanos, "never within the band for the least length");
  }

  private boolean restedForAWhile() {
    boolean slow = contacts.periodNanos() > settings.restNanos() / 2.0;
    return slow
        ? mostSamples >= Math.max(2, needSamples() - 2)
        : longestNanos > settings.restNanos() * 3 / 5;
  }

  private int needSamples() {
    return settings.leastSamplesAt(contacts.periodNanos());
  }

  private long needNanos() {
    long byCount = Math.round((needSamples() - 1) * contacts.periodNanos());
    return settings.isSlow(byCount) ? byCount : Math.max(settings.restNanos(), byCount) * 3 / 2;
  }

  private String tooShort(long contactNanos) {
    double rested = Math.min(longestNanos, contactNanos) / 1e9;
    return String.format(
        Locale.ROOT,
        "at rest for %.1f s (%d values); %.1f s and %d values are needed",
        rested,
        mostSamples,
        needNanos() / 1e9,
        needSamples());
  }

  private Sentence vibrates() {
    return Sentence.of(
        "the value swings by %s; rest longer, stop what vibrates, or state a wider"
            + " capture.bandMm",
        Quantity.uncertainty(Length.mm(leastSpreadNm)));
  }
}
