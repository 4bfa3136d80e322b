package org.chordlog.profile;

import org.jspecify.annotations.Nullable;

/**
 * Depth at which the plunger hangs free: given, or learned as the rest that is furthest out, and
 * then followed as it drifts. The plunger touches when it is pushed in by more than a quarter of
 * what it stands out of the feet's plane, and by 0.5 mm at least.
 */
final class FreeAirLevel {
  private static final int REST = 5;
  private static final long BAND_NM = 100_000;
  private static final long LEAST_CONTACT_NM = 500_000;

  private final boolean given;
  private final long[] last = new long[REST];
  private long seen;
  private boolean known;
  private long levelNm;

  FreeAirLevel(@Nullable Long givenNm) {
    given = givenNm != null;
    known = given;
    levelNm = givenNm == null ? 0 : givenNm;
  }

  /** Told of each value, before it is asked about. */
  void offer(long depthNm) {
    last[(int) (seen++ % REST)] = depthNm;
    if (!given && seen >= REST) {
      learn();
    }
  }

  private void learn() {
    long least = Long.MAX_VALUE;
    long most = Long.MIN_VALUE;
    long sum = 0;
    for (long value : last) {
      least = Math.min(least, value);
      most = Math.max(most, value);
      sum += value;
    }
    if (most - least <= BAND_NM) {
      rested(sum / REST);
    }
  }

  private void rested(long meanNm) {
    if (meanNm > -LEAST_CONTACT_NM) {
      return;
    }
    if (!known || meanNm < levelNm - BAND_NM) {
      known = true;
      levelNm = meanNm;
    } else if (meanNm < levelNm + contactNm() / 2) {
      levelNm += (meanNm - levelNm) / 16;
    }
  }

  boolean touches(long depthNm) {
    return known && depthNm > levelNm + contactNm();
  }

  /** Whether the plunger is further out than free air was thought to be. */
  boolean refutedBy(long depthNm) {
    return !given && known && depthNm < levelNm - contactNm();
  }

  long contactNm() {
    return Math.max(LEAST_CONTACT_NM, -levelNm / 4);
  }

  long pushedInNm(long depthNm) {
    return depthNm - levelNm;
  }

  boolean known() {
    return known;
  }

  long levelNm() {
    return levelNm;
  }
}
