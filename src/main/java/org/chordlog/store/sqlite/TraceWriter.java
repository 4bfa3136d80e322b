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

/**
 * Gathers samples in memory, a bounded number, and hands them to the writer's transaction as one
 * block a station and tick.
 */
final class TraceWriter {
  static final int CAPACITY = 200_000;

  /** So many of one station are packed and committed without waiting for the tick. */
  static final int CROWD = 16_384;

  /** So many of one station may wait while the disk works; a device that is faster waits. */
  static final int ROOM_OF_ONE = 6 * CROWD;

  private static final long MOST_WAIT_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final Connection connection;
  private final long tickNanos;
  private final Map<String, List<Sample>> flushing = new HashMap<>();
  private Map<String, List<Sample>> waiting = new HashMap<>();
  private boolean refusing;
  private boolean crowded;
  private int waitingCount;
  private long flushedCount;
  private long refusedCount;
  private long lastFlush = System.nanoTime();

  TraceWriter(Connection connection, long tickMillis) {
    this.connection = connection;
    this.tickNanos = TimeUnit.MILLISECONDS.toNanos(tickMillis);
  }

  /** False when there is no room, and none of them was taken. */
  synchronized boolean append(String station, List<Sample> samples) {
    if (refusing || waitingCount + samples.size() > CAPACITY) {
      return false;
    }
    List<Sample> ofStation = waiting.computeIfAbsent(station, name -> new ArrayList<>());
    ofStation.addAll(samples);
    waitingCount += samples.size();
    crowded |= ofStation.size() >= CROWD;
    return true;
  }

  /** Whether the next commit should come at once. */
  synchronized boolean crowded() {
    return crowded;
  }

  /** Until that station has room, a second at most. */
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
    return samples != null && samples.size() + count > ROOM_OF_ONE;
  }

  /** Drops all that comes, while there is no space for it. */
  synchronized void refuse(boolean now) {
    refusing = now;
    notifyAll();
  }

  /** Whether samples have waited long enough or are many; at the last commit, any. */
  synchronized boolean due(boolean last) {
    return waitingCount > 0 && (last || crowded || System.nanoTime() - lastFlush >= tickNanos);
  }

  /** To be called before the commit. */
  void flush() throws SQLException {
    take();
    insertTaken();
  }

  /** Of those stations alone: a reading is never kept without the samples it was taken from. */
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
    crowded = false;
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

  /** What the commit kept, and what broke a rule of the database. */
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
