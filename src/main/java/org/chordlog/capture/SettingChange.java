package org.chordlog.capture;

import org.jspecify.annotations.Nullable;

/** Tells a changed direction or unit from a moved zero by what became of a value. */
final class SettingChange {
  private static final double[] FACTORS = {25.4, 10};

  /** Values within so many steps of nought look alike in any unit or direction. */
  private static final int LEAST_STEPS = 40;

  private SettingChange() {}

  /**
   * Null where neither direction nor unit explains the change.
   *
   * @param nearNm how well the two values are known
   */
  static StreamDoubt.@Nullable Kind of(
      long fromNm, long toNm, CaptureSettings settings, long nearNm) {
    double step = settings.resolutionNm();
    if (Math.min(Math.abs(fromNm), Math.abs(toNm)) < LEAST_STEPS * step) {
      return null;
    }
    if (Math.abs(fromNm + toNm) <= Math.max(3 * step, (double) nearNm)) {
      return StreamDoubt.Kind.DIRECTION;
    }
    for (double factor : FACTORS) {
      boolean smaller = Math.abs(toNm - fromNm / factor) <= Math.max(2 * step, (double) nearNm);
      boolean larger = Math.abs(toNm - fromNm * factor) <= 2 * step * factor;
      if (smaller || larger) {
        return StreamDoubt.Kind.UNIT;
      }
    }
    return null;
  }
}
