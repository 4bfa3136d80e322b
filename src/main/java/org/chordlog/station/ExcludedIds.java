package org.chordlog.station;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.chordlog.measure.Exclusion;

/** Readings that are out of the statistics after exclusions and their undoing, in order. */
record ExcludedIds(Set<Long> ids) {
  static ExcludedIds of(List<Exclusion> exclusions) {
    Set<Long> ids = new HashSet<>();
    for (Exclusion exclusion : exclusions) {
      if (exclusion.excluded()) {
        ids.add(exclusion.readingId());
      } else {
        ids.remove(exclusion.readingId());
      }
    }
    return new ExcludedIds(ids);
  }

  boolean contains(long readingId) {
    return ids.contains(readingId);
  }
}
