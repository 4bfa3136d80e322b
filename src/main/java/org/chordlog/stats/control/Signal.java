package org.chordlog.stats.control;

import java.util.List;

/**
 * A run test (Nelson 1984, tests 1 to 8) that fired: at which points, on which side of the centre.
 */
public record Signal(int test, List<Long> points, Side side) {
  /** Side of the centre line; of a trend: rising is above, falling below. */
  public enum Side {
    ABOVE,
    BELOW,
    BOTH
  }

  public Signal {
    points = List.copyOf(points);
  }
}
