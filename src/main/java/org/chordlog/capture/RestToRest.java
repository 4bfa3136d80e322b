package org.chordlog.capture;

import org.chordlog.measure.CapturedDepth;

/**
 * Tells a hand that moves a bridge or a piece from one rest to the next from something that runs
 * past: the hand is quick, and what it has moved then stays where it is to within its noise. What
 * runs past is hardly quicker between two crests than it may be on them.
 */
final class RestToRest {
  private static final long MOST_MOVE_NANOS = 1_000_000_000L;
  private static final double QUICKER = 3;
  private static final double NOISES = 3;
  private final CaptureSettings settings;
  private long stayedUntil;
  private long stayedAtNm;
  private long creptThen;
  private long stayingSince;
  private long stayingAtNm;
  private long moveNanos;
  private boolean staying;
  private boolean stayed;

  RestToRest(CaptureSettings settings) {
    this.settings = settings;
  }

  /** That rest lasts. */
  void begin(CapturedDepth depth) {
    stayedUntil = depth.monotonicNanos();
    stayedAtNm = depth.valueNm();
    creptThen = 0;
    staying = false;
  }

  /** How long the value has crept, less what it did while a hand moved it. */
  long withoutMoves(long nanos, Rests rests, long creptNanos) {
    if (!rests.atRest()) {
      staying = false;
      return creptNanos;
    }
    if (!staying || hasLeft(rests)) {
      arrived(nanos, rests);
    }
    return nanos - stayingSince < settings.restNanos()
        ? creptNanos
        : stays(nanos, rests, creptNanos);
  }

  private void arrived(long nanos, Rests rests) {
    staying = true;
    stayed = false;
    stayingSince = nanos;
    stayingAtNm = rests.meanNm();
    moveNanos = nanos - rests.spanNanos() - stayedUntil;
  }

  private boolean hasLeft(Rests rests) {
    double step = settings.resolutionNm();
    double noise = Math.max(rests.restNoiseNm(), step / 2);
    double byNoise = NOISES * noise / Math.sqrt(rests.count());
    return Math.abs(rests.meanNm() - stayingAtNm) > step / 2 + byNoise;
  }

  private long stays(long nanos, Rests rests, long creptNanos) {
    boolean byHand = !stayed && wasQuick(rests);
    stayed = true;
    stayedUntil = nanos;
    stayedAtNm = rests.meanNm();
    creptThen = byHand ? Math.min(creptThen, creptNanos) : creptNanos;
    return creptThen;
  }

  private boolean wasQuick(Rests rests) {
    double movedNm = Math.abs(rests.meanNm() - stayedAtNm);
    long seemed = Math.max(moveNanos, settings.restNanos() / 3);
    return moveNanos <= MOST_MOVE_NANOS && movedNm >= QUICKER * rests.mostDriftNmPerNano() * seemed;
  }
}
