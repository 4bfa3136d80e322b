package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.LogbookEntry;
import org.jspecify.annotations.Nullable;

/** The log books of the machines; append-only. */
public interface Logbooks {
  /** An entry, and the one that corrects it, if there is one. */
  record Listed(LogbookEntry entry, @Nullable Long correctedById) {}

  /**
   * Stores an entry under a new id. Throws {@link org.chordlog.measure.BadInput} when it corrects
   * one that is not of its machine, {@link org.chordlog.measure.Stale} when that was corrected
   * before: then the newer one is to be corrected.
   */
  LogbookEntry add(LogbookEntry entry);

  Optional<Listed> find(long id);

  /** Up to {@code limit} entries of a machine with id below {@code beforeId}, descending. */
  List<Listed> ofMachine(String machine, long beforeId, int limit);
}
