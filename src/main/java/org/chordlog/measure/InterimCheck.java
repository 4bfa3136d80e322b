package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/** A comparison of a station against a master. */
public record InterimCheck(
    long id, String station, long bridgeId, long masterId, Comparison comparison, Recorded taken) {
  /**
   * Passes when |radius − master| is within the limit. {@code radiusMm} is null where the master
   * read flat, which never passes.
   */
  public record Comparison(
      @Nullable Double radiusMm, double masterRadiusMm, double limitMm, boolean passed) {
    public Comparison {
      Check.positive("limitMm", limitMm);
      if (radiusMm == null && passed) {
        throw new BadInput("passed", true, "but the master read flat", "false");
      }
    }
  }

  public InterimCheck {
    Check.text("station", station);
  }

  public @Nullable Double radiusMm() {
    return comparison.radiusMm();
  }

  public double masterRadiusMm() {
    return comparison.masterRadiusMm();
  }

  public double limitMm() {
    return comparison.limitMm();
  }

  public boolean passed() {
    return comparison.passed();
  }

  public long takenAtMicros() {
    return taken.atMicros();
  }

  public String takenBy() {
    return taken.by();
  }
}
