package org.chordlog.notify.people;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * How many mails one person may get now: three at once, and one more each 20 minutes, so that no 60
 * minutes ever have more than six.
 */
public final class MailBudget {
  public static final int BURST = 3;
  private static final Duration REFILL = Duration.ofMinutes(20);

  /** Mails sent longer ago than this decide nothing: the budget was full in between. */
  public static final Duration MEMORY = Duration.ofHours(24);

  private MailBudget() {}

  /** {@code sent}: when the mails of the last {@link #MEMORY} went out, ascending. */
  public static int left(List<Instant> sent, Instant now) {
    Instant full = Instant.MIN;
    for (Instant each : sent) {
      full = (full.isAfter(each) ? full : each).plus(REFILL);
    }
    Duration missing = full.isAfter(now) ? Duration.between(now, full) : Duration.ZERO;
    long taken = (missing.toMillis() + REFILL.toMillis() - 1) / REFILL.toMillis();
    return (int) Math.max(0, BURST - taken);
  }
}
