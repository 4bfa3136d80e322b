package org.chordlog.monitor;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.chordlog.measure.BadInput;
import org.chordlog.stats.math.Checkpointed;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Checkpoints.Slot;
import org.chordlog.store.StoreException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Checkpoints of one owner: the newest each 1,000 readings, older ones eight times further apart a
 * level. Going back by d readings reprocesses at most about 8 d + 1,000 of them.
 */
final class CheckpointLadder<S extends Checkpointed> {
  static final int STEP = 1_000;
  private static final int FACTOR = 8;
  private static final int TOP_LEVEL = 5;
  private static final int SPARSE_LEVEL = 2;
  private static final int NOW = -1;
  private static final Logger LOG = LoggerFactory.getLogger(CheckpointLadder.class);

  private final Checkpoints checkpoints;
  private final String owner;
  private final Supplier<S> empty;
  private final Function<byte[], S> restore;

  /** {@code restore} throws {@link BadInput} for a state that does not fit. */
  CheckpointLadder(
      Checkpoints checkpoints, String owner, Supplier<S> empty, Function<byte[], S> restore) {
    this.checkpoints = checkpoints;
    this.owner = owner;
    this.empty = empty;
    this.restore = restore;
  }

  Running<S> newest() {
    return upTo(Long.MAX_VALUE);
  }

  /** The newest state without readings above that id; newer checkpoints are deleted. */
  Running<S> back(long readingId) {
    forgetAbove(readingId);
    return upTo(readingId);
  }

  /** An empty state; every checkpoint is deleted. */
  Running<S> fresh() {
    forgetAbove(-1);
    return new Running<>(empty.get());
  }

  /** A checkpoint that cannot be deleted is simply passed over next time. */
  private void forgetAbove(long readingId) {
    try {
      checkpoints.removeAbove(owner, readingId);
    } catch (StoreException e) {
      LOG.atWarn()
          .addKeyValue("owner", owner)
          .log("old checkpoint not deleted: {}", e.getMessage());
    }
  }

  private Running<S> upTo(long readingId) {
    for (Slot slot : checkpoints.of(owner)) {
      Optional<Running<S>> found = slot.readingId() <= readingId ? restore(slot) : Optional.empty();
      if (found.isPresent()) {
        return found.get();
      }
    }
    return new Running<>(empty.get());
  }

  private Optional<Running<S>> restore(Slot slot) {
    try {
      return checkpoints.find(slot).map(packed -> Running.unpack(packed, restore));
    } catch (BadInput e) {
      LOG.atInfo().addKeyValue("owner", owner).log("a checkpoint is ignored: {}", e.getMessage());
      return Optional.empty();
    }
  }

  /**
   * Stores the state if a checkpoint is due, and returns whether it was. While many readings are
   * processed in one go, the two lowest levels are skipped.
   */
  boolean keepIfDue(Running<S> running, boolean many) {
    int level = level(running.count());
    boolean due = running.count() % STEP == 0 && running.settled();
    if (due && (!many || level >= SPARSE_LEVEL)) {
      put(level, running);
      return true;
    }
    return false;
  }

  void keepNow(Running<S> running) {
    if (running.settled()) {
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

  private void put(int level, Running<S> running) {
    try {
      checkpoints.put(new Slot(owner, level, running.lastReadingId()), running.pack());
    } catch (StoreException e) {
      LOG.atDebug().addKeyValue("owner", owner).log("no checkpoint: {}", e.getMessage());
    }
  }
}
