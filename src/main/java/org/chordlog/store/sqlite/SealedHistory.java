package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.store.sql.Now;
import org.chordlog.store.sql.RowBytes;

/** Seals the records of a database that had no chain of hashes yet, as they are found. */
final class SealedHistory {
  private static final int RECORDS = 1_000;

  private final Connection connection;
  private final SealBody body = new SealBody();
  private final RowBytes bytes = new RowBytes();
  private SealEntry newest;

  private SealedHistory(Connection connection) throws SQLException {
    this.connection = connection;
    this.newest = SealEntry.newest(connection);
  }

  static void writeAll(Connection connection) throws SQLException {
    SealedHistory history = new SealedHistory(connection);
    for (SealedTable each : SealedTable.values()) {
      if (each.ofTheFirst()) {
        history.write(each);
      }
    }
    history.flush();
  }

  private void write(SealedTable table) throws SQLException {
    try (PreparedStatement all = connection.prepareStatement(table.select() + " ORDER BY 1");
        ResultSet rows = all.executeQuery()) {
      while (rows.next()) {
        body.add(table, rows.getLong(1), bytes.hash(rows));
        if (body.records() == RECORDS) {
          flush();
        }
      }
    }
  }

  private void flush() throws SQLException {
    if (body.records() > 0) {
      newest = newest.next(Now.micros(), body.take());
      newest.insert(connection);
    }
  }
}
