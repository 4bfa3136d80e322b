package org.chordlog.monitor;

import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.StatisticsPlan;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Checkpoints.Slot;
import org.chordlog.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Checkpoints of one owner: the newest each 1,000 readings, older ones eight times further apart a
 * level. Winding back by d readings goes over at most about 8 d + 1,000 of them again.
 */
final class Ladder {
  static final int STEP = 1_000;
  private static final int FACTOR = 8;
  private static final int TOP_LEVEL = 5;
  private static final int SPARSE_LEVEL = 2;
  private static final int NOW = -1;
  private static final Logger LOG = LoggerFactory.getLogger(Ladder.class);

  private final Checkpoints checkpoints;
  private final String owner;

  Ladder(Checkpoints checkpoints, String owner) {
    this.checkpoints = checkpoints;
    this.owner = owner;
  }

  Running newest(StatisticsPlan plan) {
    return upTo(plan, Long.MAX_VALUE);
  }

  /** State that holds no reading above that id; newer checkpoints are dropped. */
  Running back(StatisticsPlan plan, long readingId) {
    checkpoints.removeAbove(owner, readingId);
    return upTo(plan, readingId);
  }

  /** An empty state; every checkpoint is dropped. */
  Running fresh(StatisticsPlan plan) {
    checkpoints.removeAbove(owner, -1);
    return new Running(new JobStatistics(plan));
  }

  private Running upTo(StatisticsPlan plan, long readingId) {
    for (Slot slot : checkpoints.of(owner)) {
      Optional<Running> found =
          slot.readingId() <= readingId ? restore(plan, slot) : Optional.empty();
      if (found.isPresent()) {
        return found.get();
      }
    }
    return new Running(new JobStatistics(plan));
  }

  private Optional<Running> restore(StatisticsPlan plan, Slot slot) {
    try {
      return checkpoints.find(slot).map(state -> Running.unpack(plan, state));
    } catch (BadInput e) {
      LOG.atInfo().addKeyValue("owner", owner).log("a checkpoint of another plan is passed over");
      return Optional.empty();
    }
  }

  /** While many readings are gone over in one go, the two lowest levels are left out. */
  void keepIfDue(Running running, boolean many) {
    if (running.count() % STEP == 0 && running.settled()) {
      int level = level(running.count());
      if (!many || level >= SPARSE_LEVEL) {
        put(level, running);
      }
    }
  }

  void keepNow(Running running) {
    if (running.count() % STEP != 0 && running.settled()) {
      put(NOW, running);
    }
  }

  private static int level(long count) {
    int level = 0;
    for (long steps = count / STEP; level < TOP_LEVEL && steps % FACTOR == 0; steps /= FACTOR) {
      level++;
    }
    return level;
  }

  private void put(int level, Running running) {
    try {
      checkpoints.put(new Slot(owner, level, running.lastReadingId()), running.pack());
    } catch (StoreException e) {
      LOG.atWarn().addKeyValue("owner", owner).log("no checkpoint: {}", e.getMessage());
    }
  }
}
