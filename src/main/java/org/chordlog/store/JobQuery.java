package org.chordlog.store;

import org.chordlog.measure.Check;
import org.chordlog.measure.Job;
import org.jspecify.annotations.Nullable;

/**
 * Which jobs, in which order; null is any. {@code text} is looked for in name, part and lot. The
 * page starts after the job {@code afterId} in that order (null: at the first).
 */
public record JobQuery(
    @Nullable String machine,
    Job.@Nullable State state,
    @Nullable String text,
    @Nullable Long openedFromMicros,
    @Nullable Long openedToMicros,
    Order order,
    @Nullable Long afterId,
    int limit) {
  public enum Order {
    NEWEST,
    OLDEST,
    NAME
  }

  public static final int MOST = 1_000;

  /** Jobs in any state, of any date. */
  public static JobQuery inAnyState(
      @Nullable String machine,
      @Nullable String text,
      Order order,
      @Nullable Long afterId,
      int limit) {
    return new JobQuery(machine, null, text, null, null, order, afterId, limit);
  }

  public JobQuery {
    Check.within("limit", limit, 1, MOST);
  }
}
