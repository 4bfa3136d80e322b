package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Change;

/** The append-only record of changes. */
public interface Changes {
  /** Stores an entry under a new id. */
  Change add(Change change);

  /** Up to {@code limit} entries with id below {@code beforeId}, descending. */
  List<Change> list(long beforeId, int limit);

  /** All entries about that, for example "job 7", ascending. */
  List<Change> about(String what);
}
