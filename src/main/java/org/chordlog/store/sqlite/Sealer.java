package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicLong;
import org.chordlog.measure.Reading;
import org.chordlog.store.sql.Now;
import org.chordlog.store.sql.ReadingRow;
import org.chordlog.store.sql.RowBytes;
import org.chordlog.store.sql.Sql;

/**
 * Adds an entry to the chain of hashes for what a commit adds, within that commit. Readings are
 * told by their writer, since there are many; rows of other tables are noted by triggers of this
 * connection, so that none can be forgotten. The writer's thread only; {@link #newest} and {@link
 * #hash} any thread.
 */
class Sealer {
  private static final String NOTES =
      "CREATE TEMP TABLE unsealed (code INTEGER NOT NULL, key INTEGER NOT NULL)";
  private static final String NOTED = "SELECT code, key FROM unsealed ORDER BY rowid";

  private record Note(int code, long key) {}

  private final Connection connection;
  private final SealBody body = new SealBody();
  private final RowBytes bytes = new RowBytes();
  private SealEntry made;
  private volatile SealEntry newest;
  private final AtomicLong records = new AtomicLong();

  Sealer(Connection connection) throws SQLException {
    this.connection = connection;
    this.newest = withoutBody(SealEntry.newest(connection));
    this.made = newest;
    Sql.run(connection, "PRAGMA temp_store = MEMORY");
    Sql.run(connection, NOTES);
    for (SealedTable each : SealedTable.values()) {
      if (each != SealedTable.READING) {
        Sql.run(connection, trigger(each));
      }
    }
  }

  private static String trigger(SealedTable of) {
    return "CREATE TEMP TRIGGER unsealed_%s AFTER INSERT ON main.%s BEGIN INSERT INTO unsealed VALUES (%s, %s); END"
        .formatted(of.table, of.table, of.code, of.keyOfNew());
  }

  /**
   * Of the row of a reading; called by the thread that brings it, so that the writer has it ready.
   */
  byte[] hash(Reading reading, long run) {
    return ReadingRow.hash(reading, run);
  }

  void reading(long id, byte[] rowHash) {
    body.add(SealedTable.READING, id, rowHash);
  }

  /** Call before the commit. */
  void flush() throws SQLException {
    List<Note> notes = Sql.list(connection, NOTED, Sealer::note);
    for (Note each : notes) {
      add(each);
    }
    if (!notes.isEmpty()) {
      int unused = Sql.update(connection, "DELETE FROM unsealed");
    }
    if (body.records() > 0) {
      made = newest.next(Now.micros(), body.take());
      made.insert(connection);
    }
  }

  private static Note note(ResultSet row) throws SQLException {
    return new Note(row.getInt(1), row.getLong(2));
  }

  private void add(Note note) throws SQLException {
    SealedTable table = Objects.requireNonNull(SealedTable.find(note.code()));
    try (PreparedStatement one = Sql.prepare(connection, table.selectOne(), note.key());
        ResultSet row = one.executeQuery()) {
      if (row.next()) {
        body.add(table, note.key(), bytes.hash(row));
      }
    }
  }

  void committed() {
    long unused = records.addAndGet(made.records());
    made = withoutBody(made);
    newest = made;
  }

  void rolledBack() {
    byte[] unused = body.take();
    made = newest;
  }

  /** The newest entry that was committed, without its records. */
  SealEntry newest() {
    return newest;
  }

  /** Sealed since the start. */
  long records() {
    return records.get();
  }

  private static SealEntry withoutBody(SealEntry entry) {
    return new SealEntry(entry.seq(), entry.atMicros(), new byte[0], entry.hash());
  }
}
