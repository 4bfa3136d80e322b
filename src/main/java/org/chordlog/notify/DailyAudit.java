package org.chordlog.notify;

import java.util.List;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.chordlog.timer.TimedWork;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Follows the chain of hashes once a day, for the first time an hour after the start, on the thread
 * "alert-audit", since it reads everything that is sealed. Any thread asks for what was found.
 */
public final class DailyAudit implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(DailyAudit.class);
  private static final int FIRST_HOURS = 1;
  private static final int EACH_HOURS = 24;

  private final Supplier<List<String>> audit;
  private final ScheduledExecutorService days = TimedWork.timer("alert-audit");
  private volatile @Nullable List<String> faults;

  /** {@code audit}: a sentence for each fault, none where all is well. */
  public DailyAudit(Supplier<List<String>> audit) {
    this.audit = audit;
  }

  /**
   * Starts the thread that follows the chain of hashes: first an hour after the start, then each
   * day.
   */
  public void start() {
    var unused =
        days.scheduleWithFixedDelay(
            TimedWork.of(this::look), FIRST_HOURS, EACH_HOURS, TimeUnit.HOURS);
  }

  /** What can't be read now is looked at the next day. */
  void look() {
    try {
      faults = List.copyOf(audit.get());
    } catch (RuntimeException e) {
      LOG.atWarn().setCause(e).log("the chain of hashes could not be followed");
    }
  }

  /** What was found last; null before the first look, when nothing is known. */
  public @Nullable List<String> faults() {
    return faults;
  }

  @Override
  public void close() {
    days.shutdownNow();
  }
}
