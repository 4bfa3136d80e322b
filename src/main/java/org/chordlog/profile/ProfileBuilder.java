package org.chordlog.profile;

/**
 * Makes the profile that is stored from fine bins: as wide as the values were apart, at least 5 mm;
 * within a wider bin too the newest traverse alone counts.
 */
final class ProfileBuilder {
  private static final long QUANTUM_NM = 100;
  private static final long FINE_QUANTUM_NM = 50;
  private static final long SHALLOW_NM = 500_000;

  /** Bins are not widened for a spacing that is this much over. */
  private static final double SLACK = 0.95;

  private final FineBins bins;
  private final int merged;
  private final int firstBin;
  private final int count;
  private final int passTraverse;

  /**
   * Of the bins between two places; those that were filled before {@code passTraverse} come from an
   * earlier pass.
   */
  ProfileBuilder(FineBins bins, PieceFeed feed, int passTraverse, double fromMm, double toMm) {
    this.bins = bins;
    this.passTraverse = passTraverse;
    double spacing = SLACK * feed.pitchNm() / FineBins.WIDTH_NM;
    merged = (int) Math.max(1, Math.ceil(spacing));
    int first = Math.max(bins.first(), FineBins.index(Math.round(fromMm * 1e6)));
    int end = Math.min(bins.end(), FineBins.index(Math.round(toMm * 1e6)) + 1);
    firstBin = Math.floorDiv(first, merged);
    count = Math.max(0, Math.floorDiv(end + merged - 1, merged) - firstBin);
  }

  Profile build(PieceFeed feed, long touchNm) {
    long[][] sums = new long[count][];
    long deepest = 0;
    for (int i = 0; i < count; i++) {
      sums[i] = sums(firstBin + i);
      deepest = Math.max(deepest, sums[i][0] == 0 ? 0 : sums[i][1] / sums[i][0]);
    }
    long quantum = deepest < SHALLOW_NM ? FINE_QUANTUM_NM : QUANTUM_NM;
    ProfileFacts facts =
        new ProfileFacts(
            touchNm,
            merged * FineBins.WIDTH_NM,
            quantum,
            feed.feedNmPerSecond(),
            feed.pitchNm(),
            feed.events());
    return quantised(facts, sums);
  }

  /** Count, sum of depths, sum of places from the bin's start, flags. */
  private long[] sums(int bin) {
    int newest = 0;
    for (int fine = bin * merged; fine < (bin + 1) * merged; fine++) {
      newest = Math.max(newest, bins.count(fine) == 0 ? 0 : bins.traverse(fine));
    }
    long[] sums = new long[4];
    for (int part = 0; part < merged; part++) {
      int fine = bin * merged + part;
      if (newest > 0 && bins.count(fine) > 0 && bins.traverse(fine) == newest) {
        sums[0] += bins.count(fine);
        sums[1] += bins.depthSum(fine);
        sums[2] += bins.placeSum(fine) + (long) bins.count(fine) * part * FineBins.WIDTH_NM;
        sums[3] |= bins.flags(fine);
      }
    }
    sums[3] |= newest > 0 && newest < passTraverse ? Profile.EARLIER_PASS : 0;
    return sums;
  }

  private Profile quantised(ProfileFacts facts, long[][] sums) {
    int[] counts = new int[count];
    int[] depths = new int[count];
    int[] places = new int[count];
    int[] flags = new int[count];
    for (int i = 0; i < count; i++) {
      long n = sums[i][0];
      if (n > 0) {
        counts[i] = (int) Math.min(Profile.MOST_COUNT, n);
        depths[i] = (int) nearest(sums[i][1], n * facts.quantumNm());
        long place = Math.floorDiv(sums[i][2] * Profile.PLACES, n * facts.widthNm());
        places[i] = (int) Math.max(0, Math.min(Profile.PLACES - 1, place));
        flags[i] = (int) sums[i][3];
      }
    }
    return new Profile(facts, firstBin, counts, depths, places, flags);
  }

  private static long nearest(long sum, long by) {
    return Math.floorDiv(2 * sum + by, 2 * by);
  }
}
