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
  private int swinging;

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
    } else if (rests.swings() && rests.spreadNm() < leastSpreadNm) {
      leastSpreadNm = rests.spreadNm();
      noiseNm = rests.noiseNm();
      swinging = rests.count();
    }
  }

  /** {@code rest} is the one that may not be taken, if there was any. */
  Rejected refusal(long nanos, ShortRest rest) {
    long contactNanos = nanos - contacts.sinceNanos();
    if (rest.atTwoValues()) {
      return new Rejected(Reason.TOO_SHORT, nanos, atTwoValues());
    }
    if (restedForAWhile() || contactNanos < 2 * untilTakenNanos()) {
      long need = rest.lastSequence() == 0 ? needNanos() : untilTakenNanos();
      return new Rejected(Reason.TOO_SHORT, nanos, tooShort(contactNanos, need));
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

  /** A rest that the plunger leaves. */
  private long needNanos() {
    return Math.max(settings.restNanos(), byCountNanos());
  }

  private long byCountNanos() {
    return Math.round((needSamples() - 1) * contacts.periodNanos());
  }

  /** A rest that is taken while it lasts. */
  private long untilTakenNanos() {
    return settings.isSlow(byCountNanos()) ? needNanos() : needNanos() * 3 / 2;
  }

  private String atTwoValues() {
    return String.format(
        Locale.ROOT,
        "at rest at two values, at neither for as long as %.1f s",
        untilTakenNanos() / 1e9);
  }

  private String tooShort(long contactNanos, long needNanos) {
    double rested = Math.min(longestNanos, contactNanos) / 1e9;
    return String.format(
        Locale.ROOT,
        "at rest for %.1f s (%d values); %.1f s and %d values are needed",
        rested,
        mostSamples,
        needNanos / 1e9,
        needSamples());
  }

  private Sentence vibrates() {
    return noiseNm > settings.contactNm() / 4.0 ? likeAContact() : notGoodEnough();
  }

  private Sentence likeAContact() {
    return Sentence.of(
        "the value swings by %s, which can't be told from being lifted and set down; stop what"
            + " vibrates, or set a wider capture.contactMm",
        Quantity.uncertainty(Length.mm(leastSpreadNm)));
  }

  private Sentence notGoodEnough() {
    return Sentence.of(
        "the value swings by %s, so that the mean of %s values is good to %s, where %s is"
            + " permitted by the %s; stop what vibrates, or set a longer capture.restSeconds or a"
            + " wider capture.bandMm",
        Quantity.uncertainty(Length.mm(leastSpreadNm)),
        swinging,
        Quantity.uncertainty(Length.mm(Math.round(noiseNm / Math.sqrt(Math.max(1, swinging))))),
        Quantity.uncertainty(Length.mm(rests.meanMayErrNm())),
        rests.toleranceDecides() ? "tolerance of the job" : "error of the indicator");
  }
}
