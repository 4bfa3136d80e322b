package org.chordlog.capture;

/** Where the last two rests were that are a contact apart. */
final class RecentRests {
  private final long contactNm;
  private long newestNm;
  private long olderNm;
  private int known;

  RecentRests(long contactNm) {
    this.contactNm = contactNm;
  }

  void rested(long meanNm) {
    if (known == 0 || Math.abs(meanNm - newestNm) > contactNm) {
      olderNm = newestNm;
      known = Math.min(known + 1, 2);
    }
    newestNm = meanNm;
  }

  boolean restedAt(long valueNm, long toleranceNm) {
    return (known > 0 && Math.abs(newestNm - valueNm) <= toleranceNm)
        || (known > 1 && Math.abs(olderNm - valueNm) <= toleranceNm);
  }
}
