package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * A comparison of a station against a master: passes when |radius − master| is within the limit.
 * {@code radiusMm} is null where the master read flat, which never passes.
 */
public record InterimCheck(
    long id,
    String station,
    long bridgeId,
    long masterId,
    @Nullable Double radiusMm,
    double masterRadiusMm,
    double limitMm,
    boolean passed,
    long takenAtMicros,
    String takenBy) {
  public InterimCheck {
    Check.text("station", station);
    Check.positive("limitMm", limitMm);
    if (radiusMm == null && passed) {
      throw new BadInput("passed", true, "but the master read flat", "false");
    }
  }
}
