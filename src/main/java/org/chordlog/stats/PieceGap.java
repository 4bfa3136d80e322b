package org.chordlog.stats;

import java.util.List;

/**
 * A piece without a reading that counts at each planned position: {@code never} was it measured
 * there, all its readings there are {@code excluded}. {@code counts}: whether any of its readings
 * does.
 */
public record PieceGap(int piece, boolean counts, List<String> never, List<String> excluded) {
  public PieceGap {
    never = List.copyOf(never);
    excluded = List.copyOf(excluded);
  }
}
