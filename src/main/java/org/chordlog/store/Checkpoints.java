package org.chordlog.store;

import java.util.List;
import java.util.Optional;

/**
 * Saved states of running statistics, so that a restart need not read every reading. Losing one
 * costs time, nothing else.
 */
public interface Checkpoints {
  /** A saved state, and the last reading that is in it. */
  record Slot(String owner, int level, long readingId) {}

  /** Saves a state, in place of any other of the same owner and level. */
  void put(Slot slot, byte[] state);

  /** What is saved of an owner, the highest reading id first. */
  List<Slot> of(String owner);

  /** The state that was saved under exactly this slot. */
  Optional<byte[]> find(Slot slot);

  /** Removes the owner's states that include readings above that id. */
  void removeAbove(String owner, long readingId);
}
