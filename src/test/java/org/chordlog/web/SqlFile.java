package org.chordlog.web;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.chordlog.store.sqlite.SqliteStore;

/** The database of a service that was closed, by SQL behind its back. */
final class SqlFile {
  private SqlFile() {}

  static void change(Path directory, String sql) throws SQLException {
    try (Connection connection = connection(directory);
        Statement statement = connection.createStatement()) {
      int unused = statement.executeUpdate(sql);
    }
  }

  static long count(Path directory, String sql) throws SQLException {
    try (Connection connection = connection(directory);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(sql)) {
      return row.getLong(1);
    }
  }

  private static Connection connection(Path directory) throws SQLException {
    return DriverManager.getConnection("jdbc:sqlite:" + directory.resolve(SqliteStore.FILE_NAME));
  }
}
