package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Change;

/** The append-only record of changes. */
public interface Changes {
  Change add(Change change);

  List<Change> list(long beforeId, int limit);
}
