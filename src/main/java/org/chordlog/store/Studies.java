package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.StudyMeasurement;

/**
 * Studies of the gauge done at stations, with measurements of their own. Measurements are never
 * changed; one that was spoilt is dropped, stays in the record, and its step is open again.
 */
public interface Studies {
  /** Stores it under a new id. With it goes an entry "study ID" in {@link Changes}. */
  GaugeStudy add(GaugeStudy study);

  Optional<GaugeStudy> find(long id);

  /** Studies with an id below that, the newest first. */
  List<GaugeStudy> list(long beforeId, int limit);

  /** The one that the station's captures belong to. */
  Optional<GaugeStudy> runningAt(String station);

  /**
   * Starts, pauses, ends or gives up a study. {@link org.chordlog.measure.BadInput} where it has
   * ended, or where another one is running at its station. With it goes an entry "study ID" in
   * {@link Changes}.
   */
  GaugeStudy become(long id, GaugeStudy.State state, String by, String why);

  /**
   * Stores it under a new id; {@link org.chordlog.measure.BadInput} where its study is not running
   * or its step has a measurement that counts.
   */
  StudyMeasurement add(StudyMeasurement measurement);

  /** Those that count, by their steps. */
  List<StudyMeasurement> counted(long studyId);

  /** Takes one out, so that its step is open again. */
  void drop(long measurementId, String reason, long atMicros, String by);
}
