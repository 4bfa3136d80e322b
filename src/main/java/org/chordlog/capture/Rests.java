package org.chordlog.capture;

import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * The rest that lasts now: one of usual scatter, or a longer one through vibration. The first is
 * preferred where both hold.
 */
final class Rests {
  /** So many still samples show that one far away is a stray one. */
  private static final int ENOUGH = 5;

  private final RestWindow usual;
  private final RestWindow vibrating;
  private @Nullable Sample suspect;

  Rests(CaptureSettings settings) {
    usual = new RestWindow(settings, RestTolerance.USUAL);
    vibrating = new RestWindow(settings, RestTolerance.VIBRATION);
  }

  void meanMayErrBy(long standardErrorNm) {
    vibrating.meanMayErrBy(standardErrorNm);
  }

  /** Greatest standard error of a mean that may be taken. */
  long meanMayErrNm() {
    return vibrating.meanMayErrNm();
  }

  /** Whether a tolerance, and not the indicator's error, says how large it may be. */
  boolean toleranceDecides() {
    return vibrating.toleranceDecides();
  }

  /**
   * A single sample far from its two neighbours, which agree, is a stray one and left out, unless
   * samples come so slowly that it may be a lift.
   */
  void add(Sample sample, boolean mayBeLift) {
    Sample held = suspect;
    suspect = null;
    if (held != null && (mayBeLift || usual.cutBy(sample.valueNm()))) {
      both(held);
    } else if (held == null && !mayBeLift && settled() && usual.cutBy(sample.valueNm())) {
      suspect = sample;
      return;
    }
    both(sample);
  }

  /** Whether the newest sample is left out so far, since it may be a stray one. */
  boolean leavesNewestOut() {
    return suspect != null;
  }

  private boolean settled() {
    return usual.count() >= ENOUGH && usual.still();
  }

  private void both(Sample sample) {
    usual.add(sample);
    vibrating.add(sample);
  }

  void clear() {
    suspect = null;
    usual.clear();
    vibrating.clear();
  }

  private RestWindow better() {
    return !usual.atRest() && vibrating.atRest() ? vibrating : usual;
  }

  /** Whether a rest has lasted long enough, over enough samples. */
  boolean atRest() {
    return usual.atRest() || vibrating.atRest();
  }

  boolean atRestBriefly() {
    return usual.atRestBriefly() || vibrating.atRestBriefly();
  }

  /** Twice as tolerant, because an operator asserts that it is still. */
  boolean atRestOnRequest() {
    return usual.atRestOnRequest() || vibrating.atRest();
  }

  /** Whether nothing beyond noise and a creep came for the least time and count of samples. */
  boolean longEnough() {
    return usual.longEnough() || vibrating.atRest();
  }

  boolean still() {
    return usual.still() || vibrating.atRest();
  }

  /** Whether the newest samples stay where they are, but scatter too much for a rest. */
  boolean swings() {
    return !still() && (usual.longEnough() || vibrating.swings());
  }

  /** Whether the newest samples go slowly somewhere: less than that far, but they are not still. */
  boolean creeps(long mostNm) {
    return usual.longEnough() && usual.spreadNm() < mostNm && !usual.still() && !vibrating.atRest();
  }

  int count() {
    return better().count();
  }

  long meanNm() {
    return better().meanNm();
  }

  long spanNanos() {
    return better().spanNanos();
  }

  /** Highest less lowest of the samples that may be one rest. */
  long spreadNm() {
    return vibrating.spreadNm();
  }

  /** Highest less lowest of the samples that rest now. */
  long restSpreadNm() {
    return better().spreadNm();
  }

  /** Speed at which something that moves evenly may still be taken for a rest. */
  double mostDriftNmPerNano() {
    return better().mostDriftNm() / Math.max(1, better().spanNanos());
  }

  double noiseNm() {
    return vibrating.noiseNm();
  }

  /** Scatter of the samples that rest now; of all that may be one rest where none do. */
  double restNoiseNm() {
    return usual.atRestBriefly() ? usual.noiseNm() : vibrating.noiseNm();
  }

  CapturedDepth captured(CaptureMode mode, Sample last) {
    return better().captured(mode, last);
  }
}
