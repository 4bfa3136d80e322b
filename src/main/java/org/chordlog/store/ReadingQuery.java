package org.chordlog.store;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decision;
import org.jspecify.annotations.Nullable;

/**
 * Which readings of a job; null is any. {@code aboveId} and {@code upToId} bound a phase or what
 * followed an event. In the order of their ids, or with a bound of time in the order of their
 * times; the page starts after the reading {@code afterId} in that order (null: at the first).
 */
public record ReadingQuery(
    long jobId,
    @Nullable String position,
    @Nullable Decision decision,
    @Nullable Boolean excluded,
    @Nullable Long fromMicros,
    @Nullable Long toMicros,
    long aboveId,
    long upToId,
    boolean newestFirst,
    @Nullable Long afterId,
    int limit) {
  public static final int MOST = 10_000;

  public ReadingQuery {
    Check.within("limit", limit, 1, MOST);
    if (fromMicros != null && toMicros != null && fromMicros > toMicros) {
      throw new BadInput("fromMicros", fromMicros, "is after toMicros", "up to " + toMicros);
    }
  }

  /** All readings of a job. */
  public static ReadingQuery ofJob(long jobId, boolean newestFirst, int limit) {
    return new ReadingQuery(
        jobId, null, null, null, null, null, 0, Long.MAX_VALUE, newestFirst, null, limit);
  }

  public boolean byTime() {
    return fromMicros != null || toMicros != null;
  }
}
