package org.chordlog.store.sqlite;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Runs SQL on a connection and closes every statement. */
final class Sql {
  interface Mapper<T> {
    T map(ResultSet row) throws SQLException;
  }

  interface Body<T> {
    T run(Connection connection) throws SQLException;
  }

  private Sql() {}

  static <T> List<T> list(
      Connection connection, String sql, Mapper<T> mapper, @Nullable Object... arguments)
      throws SQLException {
    try (PreparedStatement statement = prepare(connection, sql, arguments);
        ResultSet rows = statement.executeQuery()) {
      List<T> found = new ArrayList<>();
      while (rows.next()) {
        found.add(mapper.map(rows));
      }
      return found;
    }
  }

  static <T> Optional<T> first(
      Connection connection, String sql, Mapper<T> mapper, @Nullable Object... arguments)
      throws SQLException {
    return list(connection, sql, mapper, arguments).stream().findFirst();
  }

  static long number(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    return first(connection, sql, row -> row.getLong(1), arguments).orElse(0L);
  }

  static int update(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    try (PreparedStatement statement = prepare(connection, sql, arguments)) {
      return statement.executeUpdate();
    }
  }

  /** Inserts one row; its new id. */
  static long insert(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    update(connection, sql, arguments);
    return number(connection, "SELECT last_insert_rowid()");
  }

  /** Question marks for that many values. */
  static String places(int count) {
    return String.join(", ", Collections.nCopies(count, "?"));
  }

  static @Nullable Double nullableDouble(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? null : value;
  }

  static void run(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  static String resource(String name) {
    try (InputStream in = Sql.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("missing in the jar: " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("unreadable in the jar: " + name, e);
    }
  }

  static PreparedStatement prepare(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int i = 0; i < arguments.length; i++) {
      statement.setObject(i + 1, arguments[i]);
    }
    return statement;
  }
}
