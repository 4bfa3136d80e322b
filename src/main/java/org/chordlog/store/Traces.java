package org.chordlog.store;

import java.util.List;
import org.chordlog.measure.Sample;

/**
 * Every raw sample, kept in compressed blocks until their retention ends. Values and sequences come
 * back exactly, times rounded down to 0.1 ms.
 */
public interface Traces {
  /**
   * Queues samples of a station, in ascending sequence. Waits, one second at most, while the disk
   * works but falls behind. Returns false when they were dropped because the bounded queue is full
   * or the disk has little space.
   */
  boolean append(String station, List<Sample> samples);

  /** Samples of a station by sequence, both ends included, at most {@code limit}, ascending. */
  List<Sample> range(String station, long firstSequence, long lastSequence, int limit);

  /**
   * The highest sample sequence of a station that is stored or that a reading names, 0 if none; new
   * samples are numbered from there.
   */
  long lastSequence(String station);

  /** Removes blocks that ended before that time, a few at a time; returns how many. */
  int prune(long beforeMicros);
}
