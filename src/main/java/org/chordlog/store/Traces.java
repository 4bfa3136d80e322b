package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Sample;

/** Every raw sample, kept in compressed blocks until their retention ends. */
public interface Traces {
  /**
   * Queues samples of a station. Waits, a second at most, while the disk works but falls behind;
   * false when it does not work and the bounded queue is full: they were dropped.
   */
  boolean append(String station, List<Sample> samples);

  /** Samples of a station by sequence, both ends included, at most {@code limit}. */
  List<Sample> range(String station, long firstSequence, long lastSequence, int limit);

  /** Highest sample sequence of a station that is kept or that a reading names, 0 if none. */
  long lastSequence(String station);

  /** Removes blocks that ended before that time, a few at a time; how many went. */
  int prune(long beforeMicros);
}
