package org.chordlog.station;

import org.chordlog.measure.Sample;

/** Gives each depth its length along the feed. Used by the station's thread alone. */
interface FeedStream {
  /** Where no length is known, only the order of time counts; any constant feed serves. */
  double UNKNOWN_MM_PER_SECOND = 100;

  /** Takes depths with their lengths. */
  interface Sink {
    void runsThrough(Sample depth, long lengthNm);

    /** From here on lengths are measured, or, where they are not known, made of the time. */
    default void lengthKnown(boolean known) {}
  }

  /** A length in nm that only the time makes. */
  static long byTime(Sample sample, double mmPerSecond) {
    return Math.round(sample.monotonicNanos() / 1e3 * mmPerSecond);
  }

  /** Whether values of that channel of the indicator's frames are lengths. */
  boolean isLength(int channel);

  void depth(Sample sample);

  /** A value of a channel that is a length. */
  void length(Sample sample);

  /** Takes in what another link has brought since. */
  void catchUp();

  /** The indicator's link broke off: what was half seen is forgotten. */
  void forget();
}
