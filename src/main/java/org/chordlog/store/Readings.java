package org.chordlog.store;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;

/**
 * Readings, the set-ups they were computed from, and their exclusions. Readings are never changed
 * or removed. What speaks of the readings of a job, machine or bridge means products only; {@link
 * #find}, {@link #all}, {@link #lastId} and {@link #lastSequence} mean all kinds.
 */
public interface Readings {
  /**
   * Queues a reading (its id is ignored) and returns at once. The future completes after the commit
   * with the id given, in the order of the ids, on a thread of the store. Samples of the same
   * station that were appended before are in the same commit or an earlier one. It fails with
   * {@link org.chordlog.measure.BadInput} when the reading breaks a rule (its station and sequence
   * exist already, its job or set-up does not), which does no harm to the others; and with {@link
   * StoreException} when the queue is full or the store closes before the reading could be
   * committed. While the disk fails, the future waits.
   */
  default CompletableFuture<Reading> append(Reading reading) {
    return append(reading, List.of());
  }

  /** The same with the profiles of a piece that ran through, in the same commit. */
  CompletableFuture<Reading> append(Reading reading, List<PassedProfile> profiles);

  /**
   * Queues readings that go to another job, and returns at once. All of it is one commit, after
   * which the future completes with the new readings in order, or with {@link
   * org.chordlog.measure.Stale} where meanwhile one of the jobs was closed, or a reading excluded
   * or included; otherwise as {@link #append}.
   */
  CompletableFuture<List<Reading>> move(PieceMove move);

  /** The profiles stored with a reading, in the order of the passes; none of most readings. */
  List<PassedProfile> profiles(long readingId);

  Optional<Reading> find(long id);

  /** Up to {@code limit} readings of a job with id above {@code afterId}, ascending. */
  List<Reading> ofJob(long jobId, long afterId, int limit);

  /** The last {@code limit} readings of a job with id below {@code beforeId}, descending. */
  List<Reading> latestOfJob(long jobId, long beforeId, int limit);

  /** The last reading of a job, excluded or not. */
  default Optional<Reading> newestOfJob(long jobId) {
    return latestOfJob(jobId, Long.MAX_VALUE, 1).stream().findFirst();
  }

  List<Reading> search(ReadingQuery query);

  /**
   * Up to {@code limit} readings of all jobs on a machine with id above {@code afterId}, ascending.
   */
  List<Reading> ofMachine(String machine, long afterId, int limit);

  /**
   * Up to {@code limit} readings of a station and bridge with id above {@code afterId}, taken after
   * one time and before another, both excluded, ascending, without those excluded from the
   * statistics.
   */
  List<Reading> ofBridge(
      String station, long bridgeId, long afterMicros, long beforeMicros, long afterId, int limit);

  /** Up to {@code limit} readings of every kind with id above {@code afterId}, ascending. */
  List<Reading> all(long afterId, int limit);

  /**
   * The last {@code limit} readings of all jobs on a machine that have a profile, with id below
   * {@code beforeId}, descending, without those excluded from the statistics.
   */
  List<Reading> latestProfiled(String machine, long beforeId, int limit);

  long countOfJob(long jobId);

  /** The highest id, 0 if none. */
  long lastId();

  /** The highest sequence of a station's readings, 0 if none. */
  long lastSequence(String station);

  /** Id of a set-up; equal ones have the same id. */
  long keep(SetUp setUp);

  Optional<SetUp> setUp(long id);

  /** The set-up as JSON from which every figure comes back bit for bit. */
  Optional<String> setUpText(long id);

  /**
   * Records that a reading is excluded from the statistics, or counts again. Throws {@link
   * org.chordlog.measure.BadInput} when the reading does not exist.
   */
  Exclusion add(Exclusion exclusion);

  /** Exclusions of a job's readings and their undoing, by id; the last one of a reading counts. */
  List<Exclusion> exclusionsOfJob(long jobId);

  /** The same, with id above {@code afterId}. */
  List<Exclusion> exclusionsOfJob(long jobId, long afterId);

  /** These readings, in the same order, each with the exclusion that holds for it now. */
  List<KeptReading> withExclusions(List<Reading> readings);

  /** As {@link #search}, each reading with the exclusion that holds for it now. */
  default List<KeptReading> page(ReadingQuery query) {
    return withExclusions(search(query));
  }

  /** As {@link #find}, with the exclusion that holds for it now. */
  default Optional<KeptReading> kept(long id) {
    return withExclusions(find(id).stream().toList()).stream().findFirst();
  }

  /** Readings of all jobs on a machine. */
  long countOfMachine(String machine);

  /** Machines with readings above that id, each with its newest one. */
  Map<String, Long> machinesSince(long afterId);

  /** Of the readings of all jobs on a machine taken since then, the lowest id. */
  Optional<Long> firstOfMachine(String machine, long sinceMicros);

  /** As {@link #exclusionsOfJob(long, long)}, for all jobs on a machine. */
  List<Exclusion> exclusionsOfMachine(String machine, long afterId);
}
