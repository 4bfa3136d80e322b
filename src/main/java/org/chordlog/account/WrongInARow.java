package org.chordlog.account;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Counts wrong secrets by whom they came from, and makes who sends many wait: after so many in a
 * row one second, then twice as long each time, up to a limit. A right one ends it. Each is logged.
 * Any thread.
 */
public final class WrongInARow {
  private static final int MOST_DOUBLINGS = 30;
  private static final Logger LOG = LoggerFactory.getLogger(WrongInARow.class);

  /** The first wrong one that makes wait, the longest wait, and how many senders are remembered. */
  public record Bounds(int free, long mostSeconds, int mostRemembered) {}

  private record Row(int count, long untilNanos) {}

  private final Bounds bounds;
  private final String logged;
  private final LongSupplier nanos;
  private final Map<String, Row> rows =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Row> eldest) {
          return size() > bounds.mostRemembered();
        }
      };

  /** {@code logged}: what is said of each in the log. */
  public WrongInARow(Bounds bounds, String logged, LongSupplier nanos) {
    this.bounds = bounds;
    this.logged = logged;
    this.nanos = nanos;
  }

  /** Seconds that this sender still has to wait; 0 when it may try. */
  public synchronized long wait(String of) {
    Row row = rows.get(of);
    long left = row == null ? 0 : row.untilNanos() - nanos.getAsLong();
    return left <= 0 ? 0 : TimeUnit.NANOSECONDS.toSeconds(left) + 1;
  }

  public synchronized void wrong(String of) {
    Row before = rows.remove(of);
    int count = before == null ? 1 : before.count() + 1;
    int doublings = Math.min(MOST_DOUBLINGS, count - bounds.free());
    long seconds = count < bounds.free() ? 0 : Math.min(bounds.mostSeconds(), 1L << doublings);
    rows.put(of, new Row(count, nanos.getAsLong() + TimeUnit.SECONDS.toNanos(seconds)));
    LOG.atWarn()
        .addKeyValue("of", of)
        .addKeyValue("inARow", count)
        .addKeyValue("waitSeconds", seconds)
        .log(logged);
  }

  public synchronized void right(String of) {
    rows.remove(of);
  }
}
