package org.chordlog.measure;

/** What of a piece must lie within its specification limits. */
public enum DecideBy {
  /** The mean along its evaluated length. */
  MEAN,
  /** Each place of it. */
  EVERYWHERE,
  /** Both; the worse of the two decisions counts. */
  BOTH
}
