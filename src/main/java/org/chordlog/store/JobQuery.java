package org.chordlog.store;

import org.chordlog.measure.Check;
import org.chordlog.measure.Job;
import org.jspecify.annotations.Nullable;

/**
 * Which jobs, in which order, made step by step from {@link #of}.
 *
 * <p>A text is found in a job when it is contained in name, part, material lot, customer or drawing
 * revision (or in those that are given, in that order with one blank between). Case makes no
 * difference in any alphabet, ß is found as SS; every other character, {@code %} and {@code _} too,
 * stands for itself. Blanks at the ends are ignored; a blank text is any.
 */
public record JobQuery(Filter filter, Page page) {
  /** How jobs are ordered; equal names by id. */
  public enum Order {
    NEWEST,
    OLDEST,
    NAME
  }

  public static final int MOST = 1_000;

  /** What jobs have to be; null is any. */
  public record Filter(
      @Nullable String machine,
      Job.@Nullable State state,
      @Nullable String text,
      @Nullable Long openedFromMicros,
      @Nullable Long openedToMicros) {
    static final Filter ANY = new Filter(null, null, null, null, null);
  }

  /** The page that follows the job {@code afterId} in that order (null: the first). */
  public record Page(Order order, @Nullable Long afterId, int limit) {
    public Page {
      Check.within("limit", limit, 1, MOST);
    }
  }

  /** Up to {@code limit} jobs, whatever they are. */
  public static JobQuery of(Order order, int limit) {
    return new JobQuery(Filter.ANY, new Page(order, null, limit));
  }

  public JobQuery onMachine(@Nullable String machine) {
    return with(
        new Filter(
            machine, filter.state, filter.text, filter.openedFromMicros, filter.openedToMicros));
  }

  public JobQuery in(Job.@Nullable State state) {
    return with(
        new Filter(
            filter.machine, state, filter.text, filter.openedFromMicros, filter.openedToMicros));
  }

  public JobQuery containing(@Nullable String text) {
    return with(
        new Filter(
            filter.machine, filter.state, text, filter.openedFromMicros, filter.openedToMicros));
  }

  /** Opened between two times, both included; null is open. */
  public JobQuery opened(@Nullable Long fromMicros, @Nullable Long toMicros) {
    return with(new Filter(filter.machine, filter.state, filter.text, fromMicros, toMicros));
  }

  /** The page after that job. */
  public JobQuery after(@Nullable Long jobId) {
    return new JobQuery(filter, new Page(page.order, jobId, page.limit));
  }

  private JobQuery with(Filter changed) {
    return new JobQuery(changed, page);
  }
}
