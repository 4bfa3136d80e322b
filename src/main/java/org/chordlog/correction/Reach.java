package org.chordlog.correction;

/**
 * How far the rollers are to be moved at once, in the scale's unit. What one unit does may be
 * learned from one small move; a hundred times as far it may do something else, and a wrong reading
 * would be followed in full.
 */
record Reach(double most) {
  /** Common practice, no source: a set-up closes in on its radius in a few growing moves. */
  private static final double TIMES_THE_LARGEST = 5;

  /** Without an end where people said what one unit does, or nothing was recorded to go by. */
  static Reach of(MachineScale scale, double tried) {
    boolean said = scale.gain().perMmPerUnit() != 0;
    return new Reach(said || tried == 0 ? Double.POSITIVE_INFINITY : TIMES_THE_LARGEST * tried);
  }

  /** That far at most, the same way. */
  double cut(double amount) {
    return Math.max(-most, Math.min(most, amount));
  }

  boolean exceededBy(double amount) {
    return Math.abs(amount) > most;
  }
}
