package org.chordlog.account;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Makes an account and an address wait after wrong secrets: after {@value #FREE} in a row one
 * second, then twice as long each time, up to 15 minutes. Never for ever: a lock-out of the only
 * person who may close a job stops a line. Each is logged. Any thread.
 */
final class Tries {
  private static final int FREE = 5;
  private static final int MOST_DOUBLINGS = 10;
  private static final long MOST_SECONDS = TimeUnit.MINUTES.toSeconds(15);
  private static final int MOST_REMEMBERED = 2_000;
  private static final Logger LOG = LoggerFactory.getLogger(Tries.class);

  private record Row(int count, long untilNanos) {}

  private final LongSupplier nanos;
  private final Map<String, Row> rows =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Row> eldest) {
          return size() > MOST_REMEMBERED;
        }
      };

  Tries(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** What the proof gives; it throws {@link WrongSecret}, which counts against both. */
  <T> T of(String account, String address, Supplier<T> proof) {
    String[] keys = {"account " + account, "address " + address};
    for (String key : keys) {
      refuseWaiting(key);
    }
    try {
      T proved = proof.get();
      forget(keys);
      return proved;
    } catch (WrongSecret e) {
      for (String key : keys) {
        wrong(key);
      }
      throw e;
    }
  }

  private synchronized void refuseWaiting(String key) {
    Row row = rows.get(key);
    long left = row == null ? 0 : row.untilNanos() - nanos.getAsLong();
    if (left > 0) {
      long seconds = TimeUnit.NANOSECONDS.toSeconds(left) + 1;
      throw new TryLater(
          seconds,
          "Too many wrong tries for this "
              + key.split(" ", 2)[0]
              + ". Try again in "
              + seconds
              + " s.");
    }
  }

  private synchronized void forget(String... keys) {
    for (String key : keys) {
      rows.remove(key);
    }
  }

  private synchronized void wrong(String key) {
    Row before = rows.remove(key);
    int count = before == null ? 1 : before.count() + 1;
    int doublings = Math.min(MOST_DOUBLINGS, count - FREE);
    long seconds = count < FREE ? 0 : Math.min(MOST_SECONDS, 1L << doublings);
    rows.put(key, new Row(count, nanos.getAsLong() + TimeUnit.SECONDS.toNanos(seconds)));
    LOG.atWarn()
        .addKeyValue("of", key)
        .addKeyValue("inARow", count)
        .addKeyValue("waitSeconds", seconds)
        .log("a password, PIN, badge or code was wrong");
  }
}
