package org.chordlog.profile;

import org.chordlog.measure.Length;

/** Counts to lengths in nm, carried on over the counter's wrap. One thread. */
public final class CountLength {
  private final CountScale scale;
  private boolean started;
  private long last;
  private long total;

  public CountLength(CountScale scale) {
    this.scale = scale;
  }

  /** Length for a count; a counter that started over goes on by the nearest difference. */
  public long lengthNm(long count) {
    total = started ? total + difference(count - last) : count;
    started = true;
    last = count;
    double mm = scale.mmPerCount() * total;
    return Length.nm(scale.reversed() ? -mm : mm);
  }

  private long difference(long raw) {
    return switch (scale.bits()) {
      case 16 -> (short) raw;
      case 32 -> (int) raw;
      default -> raw;
    };
  }
}
