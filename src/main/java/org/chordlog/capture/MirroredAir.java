package org.chordlog.capture;

import org.chordlog.capture.StreamDoubt.Kind;

/**
 * Tells rests where free air would be if the indicator counted the other way, and none in free air:
 * a bend may be as deep as free air is high, but not {@value #TOLD_AT} times without the plunger
 * let out between.
 */
final class MirroredAir {
  private static final int TOLD_AT = 3;
  private final CaptureSettings settings;
  private int rests;
  private boolean moved = true;

  MirroredAir(CaptureSettings settings) {
    this.settings = settings;
  }

  /** The plunger is out. */
  void inAir() {
    rests = 0;
    moved = true;
  }

  /** True when a rest at that mean completes the evidence against free air at that level. */
  boolean rested(long meanNm, long levelNm, AirLevel air) {
    if (SettingChange.of(levelNm, meanNm, settings, air.toleranceNm()) != Kind.DIRECTION) {
      moved |= Math.abs(meanNm + levelNm) > settings.contactNm();
      return false;
    }
    if (moved && (rests > 0 || air.oneOfTwoThere())) {
      rests++;
    }
    moved = false;
    return rests >= TOLD_AT;
  }
}
