package org.chordlog.station;

import org.chordlog.measure.Length;
import org.chordlog.profile.CountLength;
import org.chordlog.profile.CountScale;

/** Lengths of the values that a frame profile reads from an encoder's frames. One thread. */
final class CountedLength {
  private final CountScale scale;
  private final CountLength counts;

  CountedLength(CountScale scale) {
    this.scale = scale;
    counts = new CountLength(scale);
  }

  /** Decimals count, but for a counter that starts over, which has none. */
  long nm(long valueNm) {
    if (scale.bits() > 0) {
      return counts.lengthNm(Math.round(Length.mm(valueNm)));
    }
    long nm = Math.round(valueNm * scale.mmPerCount());
    return scale.reversed() ? -nm : nm;
  }
}
