package org.chordlog.store;

import java.util.Optional;

/** Running states kept so that a restart need not read every reading; safe to lose. */
public interface Checkpoints {
  /** State, as text, after all readings up to {@code readingId} were in it. */
  record Checkpoint(long readingId, String state) {}

  void put(String name, Checkpoint checkpoint);

  Optional<Checkpoint> find(String name);

  void remove(String name);
}
