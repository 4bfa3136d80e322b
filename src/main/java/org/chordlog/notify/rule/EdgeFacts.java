package org.chordlog.notify.rule;

import org.chordlog.measure.BadInput;

/**
 * What a plant knows of a workshop computer that has delivered something. {@code layoutsAhead}:
 * version of the layout of its records less that of the plant; {@code program}: its version of
 * Chordlog; {@code secondsAhead}: its clock less the plant's.
 */
public record EdgeFacts(
    String name,
    String site,
    Heard heard,
    int layoutsAhead,
    String program,
    long secondsAhead,
    Began began) {
  /** When it was last heard, UTC microseconds, and how much it had to deliver then. */
  public record Heard(long atMicros, long records) {}

  /**
   * How often its records began anew, from 1; {@code why}: of the last time; {@code told}: whether
   * somebody knows, so that nothing is to be told.
   */
  public record Began(int histories, String why, boolean told) {
    public Began {
      if (histories < 1) {
        throw new BadInput("histories", histories, "is too small", "1 or more");
      }
    }
  }
}
