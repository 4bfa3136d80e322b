package org.chordlog.store;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A row as it is now: Long, Double, String, byte[] or null for each column of its table. Revision:
 * the number of its newest change, 0 for a reading.
 */
public record FeedRow(long revision, List<@Nullable Object> values) {
  /** Takes the array over, which the caller must not change any more. */
  public static FeedRow of(long revision, @Nullable Object[] values) {
    return new FeedRow(revision, Collections.unmodifiableList(Arrays.asList(values)));
  }
}
