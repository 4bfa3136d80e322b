package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.store.sql.Sql;

/** A disk that is full for the writer: its connection may not take more pages. */
final class FullDisk {
  private FullDisk() {}

  static void limit(SqliteStore store, long pages) {
    store.database().write(connection -> limit(connection, pages));
  }

  /** On the writer's connection beside its thread: the driver serialises the two. */
  static void free(SqliteStore store) throws SQLException {
    limit(store.writerConnection(), 1L << 30);
  }

  private static long limit(Connection connection, long pages) throws SQLException {
    return Sql.number(connection, "PRAGMA max_page_count = " + pages);
  }
}
