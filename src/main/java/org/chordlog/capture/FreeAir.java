package org.chordlog.capture;

import org.jspecify.annotations.Nullable;

/**
 * The value at which the plunger hangs free, against its stop: given, or learned as the rest that
 * lies furthest out. It follows a slow drift.
 */
final class FreeAir {
  private final long contactNm;
  private @Nullable Long levelNm;
  private boolean confirmed;
  private boolean seen;

  FreeAir(CaptureSettings settings) {
    contactNm = settings.contactNm();
    levelNm = settings.plunger().freeAirNm();
    confirmed = known();
  }

  boolean known() {
    return levelNm != null;
  }

  /** How far the plunger is pushed in from free air; negative beyond the level known so far. */
  long pushedInNm(long valueNm) {
    return levelNm == null ? 0 : valueNm - levelNm;
  }

  /** Whether a rest at this value would be a better guess of free air than what is known. */
  boolean improvedBy(long valueNm) {
    return levelNm == null || pushedInNm(valueNm) < -contactNm;
  }

  boolean touches(long valueNm) {
    return levelNm != null && pushedInNm(valueNm) > contactNm;
  }

  /** A rest that is no contact. */
  void restedAt(long valueNm) {
    confirmed |= known() && pushedInNm(valueNm) < -contactNm;
    levelNm = valueNm;
    seen = true;
  }

  /** Something was seen on either side of it, so that it is more than the first rest. */
  boolean confirmed() {
    return confirmed;
  }

  /** The level, where the plunger was seen to rest there since the stream began or broke off. */
  @Nullable Long seenNm() {
    return seen && confirmed ? levelNm : null;
  }

  /** After a gap the indicator may show something else there. */
  void unsee() {
    seen = false;
  }

  void confirm() {
    confirmed = true;
  }
}
