package org.chordlog.capture;

import java.util.function.Consumer;
import org.chordlog.capture.CaptureOutcome.Offered;
import org.chordlog.capture.CaptureOutcome.Withdrawn;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Length;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sample;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * Watches a contact after its depth was taken. A longer rest at another value is offered in place
 * of the first; a value that creeps on for seconds shows that the first was no rest, but a place on
 * something that runs past.
 */
final class AfterTaken {
  private static final long CREEP_NANOS = 2_000_000_000L;
  private static final int ELSEWHERE_BANDS = 3;
  private final CaptureSettings settings;
  private final Rests rests;
  private final RestToRest way;
  private @Nullable CapturedDepth taken;
  private long lastNanos;
  private long creptNanos;
  private long restingSince;
  private long offeredNm;
  private boolean unbroken;
  private boolean withdrawn;

  AfterTaken(CaptureSettings settings, Rests rests) {
    this.settings = settings;
    this.rests = rests;
    way = new RestToRest(settings);
  }

  void took(CapturedDepth depth) {
    taken = depth;
    lastNanos = depth.monotonicNanos();
    creptNanos = 0;
    way.begin(depth);
    restingSince = Long.MAX_VALUE;
    offeredNm = depth.valueNm();
    unbroken = true;
    withdrawn = false;
  }

  void ended() {
    taken = null;
  }

  /** After each further sample of the contact. */
  void offer(Sample sample, Consumer<CaptureOutcome> sink) {
    CapturedDepth first = taken;
    if (first == null || withdrawn) {
      return;
    }
    long now = sample.monotonicNanos();
    unbroken &= rests.atRest();
    creptNanos = way.withoutMoves(now, rests, creptNanos);
    if (rests.creeps(3 * bandNm(first))
        && away(sample.valueNm(), first.valueNm()) > 2 * bandNm(first)) {
      creptNanos += now - lastNanos;
    }
    lastNanos = now;
    boolean drifted = unbroken && away(rests.meanNm(), first.valueNm()) > bandNm(first);
    if (creptNanos > CREEP_NANOS || drifted) {
      withdraw(sample, first, sink);
      return;
    }
    if (creptNanos < CREEP_NANOS / 4) {
      later(sample, first, sink);
    }
  }

  private void withdraw(Sample sample, CapturedDepth first, Consumer<CaptureOutcome> sink) {
    withdrawn = true;
    Sentence detail =
        Sentence.of(
            "the value went on moving by %s: what was taken was no rest",
            moved(away(sample.valueNm(), first.valueNm())));
    sink.accept(new Withdrawn(first.valueNm(), sample.monotonicNanos(), detail));
  }

  /** Once for each such rest, when it has lasted longer than the first did. */
  private void later(Sample sample, CapturedDepth first, Consumer<CaptureOutcome> sink) {
    boolean elsewhere =
        rests.atRest() && away(rests.meanNm(), offeredNm) > ELSEWHERE_BANDS * bandNm(first);
    if (!elsewhere) {
      restingSince = Long.MAX_VALUE;
      return;
    }
    restingSince = Math.min(restingSince, sample.monotonicNanos());
    if (sample.monotonicNanos() - restingSince >= settings.restNanos()) {
      offeredNm = rests.meanNm();
      sink.accept(new Offered(rests.captured(CaptureMode.SETTLED, sample), first.valueNm()));
    }
  }

  /** The band, or what the scatter of the first makes of it. */
  private long bandNm(CapturedDepth first) {
    return Math.max(settings.bandNm(), 4 * first.scatterNm());
  }

  private Quantity moved(long nm) {
    return Quantity.of(Length.mm(nm), Length.mm(settings.bandNm()));
  }

  private static long away(long oneNm, long otherNm) {
    return Math.abs(oneNm - otherNm);
  }
}
