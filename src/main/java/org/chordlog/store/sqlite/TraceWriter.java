package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.Sample;
import org.chordlog.store.sql.TraceRow;

/**
 * Collects a bounded number of samples in memory; the writer's transaction inserts them as one
 * block for each station and tick.
 *
 * <p>Stations append from their own threads; {@code flush}, {@code committed} and {@code
 * rolledBack} belong to the writer's thread. {@code waiting} and its counters are guarded by this
 * object's lock, {@code flushing} and its counters belong to the writer alone.
 */
final class TraceWriter {
  static final int CAPACITY = 200_000;

  /** A station with this many pending samples triggers a commit before the tick. */
  static final int FLUSH_AT_SAMPLES = 16_384;

  /** Most pending samples of one station while the disk works; a faster device waits. */
  static final int MOST_WAITING_PER_STATION = 6 * FLUSH_AT_SAMPLES;

  private static final long MOST_WAIT_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final Connection connection;
  private final long tickNanos;
  private final Map<String, List<Sample>> flushing = new HashMap<>();
  private Map<String, List<Sample>> waiting = new HashMap<>();
  private boolean refusing;
  private boolean flushDue;
  private int waitingCount;
  private long flushedCount;
  private long refusedCount;
  private long lastFlush = System.nanoTime();

  TraceWriter(Connection connection, long tickMillis) {
    this.connection = connection;
    this.tickNanos = TimeUnit.MILLISECONDS.toNanos(tickMillis);
  }

  /** False when there is no room; then none of them was taken. */
  synchronized boolean append(String station, List<Sample> samples) {
    if (refusing || waitingCount + samples.size() > CAPACITY) {
      return false;
    }
    List<Sample> ofStation = waiting.computeIfAbsent(station, name -> new ArrayList<>());
    ofStation.addAll(samples);
    waitingCount += samples.size();
    flushDue |= ofStation.size() >= FLUSH_AT_SAMPLES;
    return true;
  }

  /** Whether a station has so many samples that the next commit should not wait for the tick. */
  synchronized boolean flushDue() {
    return flushDue;
  }

  /** Waits until that station has room, one second at most. */
  synchronized void awaitRoom(String station, int count) {
    long until = System.nanoTime() + MOST_WAIT_NANOS;
    long left = MOST_WAIT_NANOS;
    try {
      while (left > 0 && !refusing && isFull(station, count)) {
        TimeUnit.NANOSECONDS.timedWait(this, left);
        left = until - System.nanoTime();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private boolean isFull(String station, int count) {
    List<Sample> samples = waiting.get(station);
    return samples != null && samples.size() + count > MOST_WAITING_PER_STATION;
  }

  /** While true, samples are refused: the disk is nearly full. */
  synchronized void refuse(boolean now) {
    refusing = now;
    notifyAll();
  }

  /** Whether the pending samples belong in the next commit; in the last commit all do. */
  synchronized boolean due(boolean last) {
    return waitingCount > 0 && (last || flushDue || System.nanoTime() - lastFlush >= tickNanos);
  }

  /** Call before the commit. */
  void flush() throws SQLException {
    take();
    insertTaken();
  }

  /** Only of those stations: a reading is committed together with the samples it was taken from. */
  void flush(Set<String> stations) throws SQLException {
    take(stations);
    insertTaken();
  }

  private void insertTaken() throws SQLException {
    for (Map.Entry<String, List<Sample>> entry : flushing.entrySet()) {
      insert(entry.getKey(), entry.getValue());
    }
  }

  private synchronized void take() {
    flushing.putAll(waiting);
    waiting = new HashMap<>();
    waitingCount = 0;
    flushDue = false;
    lastFlush = System.nanoTime();
    notifyAll();
  }

  private synchronized void take(Set<String> stations) {
    for (String station : stations) {
      List<Sample> samples = waiting.remove(station);
      if (samples != null) {
        flushing.put(station, samples);
        waitingCount -= samples.size();
      }
    }
  }

  private void insert(String station, List<Sample> samples) throws SQLException {
    try {
      TraceRow.of(station, samples, samples.size() >= TraceMerger.ENOUGH_SAMPLES / 2)
          .insert(connection);
      flushedCount += samples.size();
    } catch (SQLException e) {
      if (!Failures.ofValues(e)) {
        throw e;
      }
      refusedCount += samples.size();
    }
  }

  record Counts(long kept, long refused) {}

  /** How many samples the commit stored, and how many broke a rule of the database. */
  Counts committed() {
    Counts counts = new Counts(flushedCount, refusedCount);
    clear();
    return counts;
  }

  synchronized void rolledBack() {
    for (Map.Entry<String, List<Sample>> entry : flushing.entrySet()) {
      waitingCount += entry.getValue().size();
      waiting.merge(entry.getKey(), entry.getValue(), TraceWriter::joined);
    }
    clear();
  }

  private static List<Sample> joined(List<Sample> newer, List<Sample> older) {
    older.addAll(newer);
    return older;
  }

  private void clear() {
    flushing.clear();
    flushedCount = 0;
    refusedCount = 0;
  }
}
