package org.chordlog.station;

import org.chordlog.measure.Check;

/** How old a zero may get, and what becomes of readings with a stale one or with none. */
public record ZeroRule(double maximumAgeHours, Policy whenStale, Policy whenMissing) {
  /** A shift; readings are marked when it is stale, refused when there is none. */
  public static final ZeroRule DEFAULT = new ZeroRule(8, Policy.MARK, Policy.REFUSE);

  private static final double MICROS_PER_HOUR = 3.6e9;

  /** What becomes of such a reading. */
  public enum Policy {
    MARK,
    REFUSE
  }

  public ZeroRule {
    Check.within("maximumAgeHours", maximumAgeHours, 0.01, 8_760);
  }

  boolean staleAt(long takenAtMicros, long nowMicros) {
    return nowMicros > freshUntilMicros(takenAtMicros);
  }

  /** When a zero taken then becomes too old. */
  public long freshUntilMicros(long takenAtMicros) {
    return takenAtMicros + (long) (maximumAgeHours * MICROS_PER_HOUR);
  }
}
