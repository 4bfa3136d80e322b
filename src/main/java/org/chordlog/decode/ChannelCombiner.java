package org.chordlog.decode;

import org.chordlog.measure.LengthUnit;
import org.jspecify.annotations.Nullable;

/** Pairs the values of two channels. Each value is used once; a stale partner is not paired. */
public final class ChannelCombiner {
  private static final long MOST_APART_NANOS = 500_000_000L;
  private final Combination combination;
  private Decoded.@Nullable Value first;
  private Decoded.@Nullable Value second;

  public ChannelCombiner(Combination combination) {
    this.combination = combination;
  }

  /** The combined value that this one completes, with the time of the later; else null. */
  public Decoded.@Nullable Value offer(Decoded.Value value) {
    if (value.channel() == combination.first()) {
      first = value;
    } else if (value.channel() == combination.second()) {
      second = value;
    } else {
      return null;
    }
    Decoded.Value one = first;
    Decoded.Value other = second;
    if (one == null || other == null || apart(one, other)) {
      return null;
    }
    reset();
    return combined(one, other, value);
  }

  private static boolean apart(Decoded.Value one, Decoded.Value other) {
    return Math.abs(one.monotonicNanos() - other.monotonicNanos()) > MOST_APART_NANOS;
  }

  private Decoded.Value combined(Decoded.Value one, Decoded.Value other, Decoded.Value later) {
    long nm = combination.kind().of(one.valueNm(), other.valueNm());
    LengthUnit unit = later.unit();
    return new Decoded.Value(
        later.monotonicNanos(),
        later.raw(),
        nm,
        unit,
        Combination.CHANNEL,
        one.button() || other.button());
  }

  /** Forgets a value that waits for its partner. */
  public void reset() {
    first = null;
    second = null;
  }
}
