package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Incident;

/** What happened to the stations' streams; append-only. */
public interface Incidents {
  /** Stores an incident under a new id. */
  Incident add(Incident incident);

  /** Up to {@code limit} incidents of a station with id below {@code beforeId}, descending. */
  List<Incident> ofStation(String station, long beforeId, int limit);
}
