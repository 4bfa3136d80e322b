package org.chordlog.store;

import java.util.List;
import java.util.Optional;

/** Running states kept so that a restart need not read every reading; safe to lose. */
public interface Checkpoints {
  /** A state that is kept, and the last reading that is in it. */
  record Slot(String owner, int level, long readingId) {}

  /** Keeps a state, in place of an older one of the same owner and level. */
  void put(Slot slot, byte[] state);

  /** What is kept of an owner, the newest reading first. */
  List<Slot> of(String owner);

  Optional<byte[]> find(Slot slot);

  /** Forgets the owner's states that hold readings above that id. */
  void removeAbove(String owner, long readingId);
}
