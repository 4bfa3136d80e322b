package org.chordlog.store;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.measure.Decision;
import org.chordlog.measure.ReadingKind;
import org.jspecify.annotations.Nullable;

/**
 * Which readings of a job, in which order, made step by step from {@link #oldest} or {@link
 * #newest}. In the order of ids; with a bound of time, in the order of wall times (equal ones by
 * id).
 */
public record ReadingQuery(long jobId, Filter filter, Bounds bounds, Page page) {
  public static final int MOST = 10_000;

  /** What readings have to be; null is any. */
  public record Filter(
      ReadingKind kind,
      @Nullable String position,
      @Nullable Decision decision,
      @Nullable Boolean excluded) {
    static final Filter PRODUCTS = new Filter(ReadingKind.PRODUCT, null, null, null);
  }

  /** Times, both included (null: open), and ids above one and up to another. */
  public record Bounds(
      @Nullable Long fromMicros, @Nullable Long toMicros, long aboveId, long upToId) {
    static final Bounds NONE = new Bounds(null, null, 0, Long.MAX_VALUE);

    public Bounds {
      if (fromMicros != null && toMicros != null && fromMicros > toMicros) {
        throw new BadInput("fromMicros", fromMicros, "is after toMicros", "up to " + toMicros);
      }
    }

    /** Whether a time is asked for, so that readings come in the order of time. */
    public boolean byTime() {
      return fromMicros != null || toMicros != null;
    }
  }

  /** The page that follows the reading {@code afterId} in the order asked for (null: the first). */
  public record Page(boolean newestFirst, @Nullable Long afterId, int limit) {
    public Page {
      Check.within("limit", limit, 1, MOST);
    }
  }

  /** The oldest readings of products, up to {@code limit}. */
  public static ReadingQuery oldest(long jobId, int limit) {
    return new ReadingQuery(jobId, Filter.PRODUCTS, Bounds.NONE, new Page(false, null, limit));
  }

  /** The newest readings of products, up to {@code limit}. */
  public static ReadingQuery newest(long jobId, int limit) {
    return new ReadingQuery(jobId, Filter.PRODUCTS, Bounds.NONE, new Page(true, null, limit));
  }

  public ReadingQuery ofKind(ReadingKind kind) {
    return with(new Filter(kind, filter.position, filter.decision, filter.excluded));
  }

  public ReadingQuery at(@Nullable String position) {
    return with(new Filter(filter.kind, position, filter.decision, filter.excluded));
  }

  public ReadingQuery decided(@Nullable Decision decision) {
    return with(new Filter(filter.kind, filter.position, decision, filter.excluded));
  }

  public ReadingQuery excluded(@Nullable Boolean excluded) {
    return with(new Filter(filter.kind, filter.position, filter.decision, excluded));
  }

  /** Taken between two times, both included; null is open. */
  public ReadingQuery between(@Nullable Long fromMicros, @Nullable Long toMicros) {
    return with(new Bounds(fromMicros, toMicros, bounds.aboveId, bounds.upToId));
  }

  /** With an id above one and up to another, as in a phase between two events. */
  public ReadingQuery within(long aboveId, long upToId) {
    return with(new Bounds(bounds.fromMicros, bounds.toMicros, aboveId, upToId));
  }

  /** The page after that reading. */
  public ReadingQuery after(@Nullable Long readingId) {
    return new ReadingQuery(
        jobId, filter, bounds, new Page(page.newestFirst, readingId, page.limit));
  }

  private ReadingQuery with(Filter changed) {
    return new ReadingQuery(jobId, changed, bounds, page);
  }

  private ReadingQuery with(Bounds changed) {
    return new ReadingQuery(jobId, filter, changed, page);
  }
}
