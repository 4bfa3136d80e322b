package org.chordlog.store;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;

/** Readings, the set-ups they were computed from, and their exclusions. */
public interface Readings {
  /**
   * Queues a reading (its id is ignored). The future completes after the commit, with the id given;
   * it fails only when the reading can't be kept at all.
   */
  CompletableFuture<Reading> append(Reading reading);

  Optional<Reading> find(long id);

  /** Up to {@code limit} readings of a job with id above {@code afterId}, ascending. */
  List<Reading> ofJob(long jobId, long afterId, int limit);

  /** The last {@code limit} readings of a job with id below {@code beforeId}, descending. */
  List<Reading> latestOfJob(long jobId, long beforeId, int limit);

  List<Reading> search(ReadingQuery query);

  /** Up to {@code limit} readings of all jobs on a machine with id above {@code afterId}. */
  List<Reading> ofMachine(String machine, long afterId, int limit);

  /**
   * Up to {@code limit} readings of a station and bridge with id above {@code afterId}, taken after
   * one time and before another, both excluded, ascending, without those left out of the
   * statistics.
   */
  List<Reading> ofBridge(
      String station, long bridgeId, long afterMicros, long beforeMicros, long afterId, int limit);

  /** Up to {@code limit} readings of all stations with id above {@code afterId}, ascending. */
  List<Reading> all(long afterId, int limit);

  long countOfJob(long jobId);

  long lastId();

  /** The highest sequence kept of a station, 0 if none. */
  long lastSequence(String station);

  /** Id of an equal set-up, kept once. */
  long keep(SetUp setUp);

  Optional<SetUp> setUp(long id);

  /** The same as kept: JSON that gives every figure back bit for bit. */
  Optional<String> setUpText(long id);

  Exclusion add(Exclusion exclusion);

  /** Exclusions and their undoing for readings of a job, in order. */
  List<Exclusion> exclusionsOfJob(long jobId);

  /** The same, with id above {@code afterId}. */
  List<Exclusion> exclusionsOfJob(long jobId, long afterId);

  /** Readings of all jobs on a machine. */
  long countOfMachine(String machine);

  List<Exclusion> exclusionsOfMachine(String machine, long afterId);
}
