package org.chordlog.web.http;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Counts wrong keys by address, and makes an address that sends many wait: after {@value #FREE} in
 * a row one second, then twice as long each time, up to a minute. A right key ends it. Any thread.
 */
final class WrongKeys {
  private static final int FREE = 10;
  private static final int MOST_SECONDS = 60;
  private static final int MOST_DOUBLINGS = 6;
  private static final int MOST_ADDRESSES = 1_000;
  private static final Logger LOG = LoggerFactory.getLogger(WrongKeys.class);

  /** How many in a row, and until when the address waits. */
  private record Tries(int count, long untilNanos) {}

  private final LongSupplier nanos;
  private final Map<String, Tries> tries =
      new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Tries> eldest) {
          return size() > MOST_ADDRESSES;
        }
      };

  WrongKeys(LongSupplier nanos) {
    this.nanos = nanos;
  }

  /** Seconds that this address still has to wait; 0 when it may try. */
  synchronized long wait(String address) {
    Tries before = tries.get(address);
    long left = before == null ? 0 : before.untilNanos() - nanos.getAsLong();
    return left <= 0 ? 0 : TimeUnit.NANOSECONDS.toSeconds(left) + 1;
  }

  synchronized void wrong(String address) {
    Tries before = tries.remove(address);
    int count = before == null ? 1 : before.count() + 1;
    int doublings = Math.min(MOST_DOUBLINGS, count - FREE);
    long seconds = count < FREE ? 0 : Math.min(MOST_SECONDS, 1L << doublings);
    tries.put(address, new Tries(count, nanos.getAsLong() + TimeUnit.SECONDS.toNanos(seconds)));
    LOG.atWarn()
        .addKeyValue("address", address)
        .addKeyValue("inARow", count)
        .addKeyValue("waitSeconds", seconds)
        .log("a request had a wrong key");
  }

  synchronized void right(String address) {
    tries.remove(address);
  }
}
