package org.chordlog.decode;

import java.util.List;

/**
 * What a decoder has done so far; {@code lastRefused} are the newest refused frames, oldest first,
 * at most {@value #KEPT}. {@code unanswered} counts requests without an answer.
 */
public record DecodeCounts(
    long values, long statuses, long damaged, long unanswered, List<Decoded.Damaged> lastRefused) {
  public static final int KEPT = 50;

  public DecodeCounts {
    lastRefused = List.copyOf(lastRefused);
  }
}
