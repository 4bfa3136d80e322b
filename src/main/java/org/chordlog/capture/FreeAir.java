package org.chordlog.capture;

import org.jspecify.annotations.Nullable;

/**
 * The value at which the plunger hangs free, against its stop: given, or learned as the rest that
 * lies furthest out. It follows a slow drift.
 */
final class FreeAir {
  private final long contactNm;
  private final int sign;
  private @Nullable Long levelNm;

  FreeAir(CaptureSettings settings) {
    contactNm = settings.contactNm();
    sign = settings.freeAirEnd() == FreeAirEnd.LOW ? 1 : -1;
    levelNm = settings.freeAirNm();
  }

  boolean known() {
    return levelNm != null;
  }

  /** How far the plunger is pushed in from free air; negative beyond the level known so far. */
  long pushedInNm(long valueNm) {
    return levelNm == null ? 0 : sign * (valueNm - levelNm);
  }

  boolean touches(long valueNm) {
    return levelNm != null && pushedInNm(valueNm) > contactNm;
  }

  /** A rest that is no contact. */
  void restedAt(long valueNm) {
    levelNm = valueNm;
  }
}
