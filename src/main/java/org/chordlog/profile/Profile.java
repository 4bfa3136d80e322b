package org.chordlog.profile;

import java.util.Arrays;

/**
 * Mean depths along a piece in bins of equal width, counted from where its touch began; what a
 * reading is computed from, and stored with it. Depths are whole steps of {@link
 * ProfileFacts#quantumNm}, places within a bin thirty-seconds of its width, counts go up to 255, so
 * that {@link #packed} loses nothing. Immutable.
 */
public final class Profile {
  static final int PLACES = 32;
  static final int MOST_COUNT = 255;

  /** A value of this bin came while the plunger was at the end of its travel. */
  public static final int AT_END_OF_TRAVEL = 1;

  /** What is in this bin comes from an earlier pass than the last. */
  public static final int EARLIER_PASS = 2;

  private final ProfileFacts facts;
  private final int firstBin;
  private final int[] counts;
  private final int[] depths;
  private final int[] places;
  private final int[] flags;

  Profile(ProfileFacts facts, int firstBin, int[] counts, int[] depths, int[] places, int[] flags) {
    this.facts = facts;
    this.firstBin = firstBin;
    this.counts = counts.clone();
    this.depths = depths.clone();
    this.places = places.clone();
    this.flags = flags.clone();
  }

  /** How and where it was measured. */
  public ProfileFacts facts() {
    return facts;
  }

  /** How many steps of length it has. */
  public int bins() {
    return counts.length;
  }

  /** How many values are in a bin, as far as they were stored; 0: none. */
  public int count(int bin) {
    return counts[bin];
  }

  /** Mean depth less the zero. */
  public long depthNm(int bin) {
    return depths[bin] * facts.quantumNm();
  }

  /** Mean place of a bin's values, mm from where touch began. */
  public double placeMm(int bin) {
    return (firstBin + bin + (places[bin] + 0.5) / PLACES) * facts.widthMm();
  }

  /** What is doubtful of a bin, as bits. */
  public int flags(int bin) {
    return flags[bin];
  }

  int firstBin() {
    return firstBin;
  }

  int depth(int bin) {
    return depths[bin];
  }

  int place(int bin) {
    return places[bin];
  }

  /** At most 3 bytes a bin as a rule; {@link #unpacked} gives it back to the last bit. */
  public byte[] packed() {
    return ProfilePacking.pack(this);
  }

  /** Refuses what is no packed profile. */
  public static Profile unpacked(byte[] packed) {
    return ProfilePacking.unpack(packed);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Profile that
        && facts.equals(that.facts)
        && firstBin == that.firstBin
        && Arrays.equals(counts, that.counts)
        && Arrays.equals(depths, that.depths)
        && Arrays.equals(places, that.places)
        && Arrays.equals(flags, that.flags);
  }

  @Override
  public int hashCode() {
    return 31 * facts.hashCode() + Arrays.hashCode(depths);
  }

  @Override
  public String toString() {
    return "Profile of " + facts.touchMm() + " mm in " + bins() + " bins";
  }
}
