package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.store.sql.ReadingRow;
import org.chordlog.store.sql.Sql;

/**
 * Inserts readings within the writer's transactions and updates the totals of their jobs. The
 * writer's thread only.
 */
final class ReadingWriter {
  private static final String ADD_TO_TOTAL =
      "INSERT INTO job_total VALUES (?, ?, ?, ?) ON CONFLICT (job_id) DO UPDATE SET"
          + " readings = readings + excluded.readings,"
          + " last_reading_id = excluded.last_reading_id";

  private record Total(long count, long firstId, long lastId) {
    Total plus(Total next) {
      return new Total(count + next.count, firstId, next.lastId);
    }
  }

  private final Connection connection;
  private final long run;
  private final Sealer sealer;
  private final Map<Long, Total> totals = new HashMap<>();
  private PreparedStatement insert;
  private PreparedStatement addToTotal;
  private long committedId;
  private long lastId;

  ReadingWriter(Connection connection, long run, Sealer sealer) throws SQLException {
    this.connection = connection;
    this.insert = connection.prepareStatement(ReadingRow.INSERT);
    this.addToTotal = connection.prepareStatement(ADD_TO_TOTAL);
    this.run = run;
    this.sealer = sealer;
    this.committedId = Sql.number(connection, "SELECT max(id) FROM reading");
    this.lastId = committedId;
  }

  /** The reading with its number; {@link #kept} follows unless the row is taken back. */
  Reading insert(Reading reading) throws SQLException {
    return insert(reading, lastId + 1);
  }

  /** The same of several; {@link #kept} follows for each unless all are taken back. */
  List<Reading> insert(List<Reading> readings) throws SQLException {
    List<Reading> numbered = new ArrayList<>();
    for (Reading each : readings) {
      numbered.add(insert(each, lastId + 1 + numbered.size()));
    }
    return numbered;
  }

  private Reading insert(Reading reading, long id) throws SQLException {
    ReadingRow.bind(insert, reading, id, run);
    insert.executeUpdate();
    return reading.withId(id);
  }

  /** Its row stays, with all that belongs to it. */
  void kept(Reading reading, byte[] hash) {
    long id = reading.id();
    sealer.reading(id, hash);
    lastId = id;
    if (reading.circumstances().kind() == ReadingKind.PRODUCT) {
      totals.merge(reading.jobId(), new Total(1, id, id), Total::plus);
    }
  }

  /** Call before the commit. */
  void flush() throws SQLException {
    for (Map.Entry<Long, Total> entry : totals.entrySet()) {
      addToTotal.setLong(1, entry.getKey());
      addToTotal.setLong(2, entry.getValue().count());
      addToTotal.setLong(3, entry.getValue().firstId());
      addToTotal.setLong(4, entry.getValue().lastId());
      addToTotal.executeUpdate();
    }
  }

  /** How many readings the commit stored. */
  long committed() {
    long count = lastId - committedId;
    totals.clear();
    committedId = lastId;
    return count;
  }

  /** Prepares the statements again: the driver closes those that a full disk made fail. */
  void rolledBack() throws SQLException {
    totals.clear();
    lastId = committedId;
    insert.close();
    addToTotal.close();
    insert = connection.prepareStatement(ReadingRow.INSERT);
    addToTotal = connection.prepareStatement(ADD_TO_TOTAL);
  }
}
