package org.chordlog.store.sql;

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
public final class Sql {
  public interface Mapper<T> {
    T map(ResultSet row) throws SQLException;
  }

  public interface Body<T> {
    public T run(Connection connection) throws SQLException;
  }

  private Sql() {}

  /**
   * All rows, in the order that the statement gives; {@code arguments} in the order of its question
   * marks.
   */
  public static <T> List<T> list(
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

  /** The first row. All rows are read, so the statement should limit them. */
  public static <T> Optional<T> first(
      Connection connection, String sql, Mapper<T> mapper, @Nullable Object... arguments)
      throws SQLException {
    return list(connection, sql, mapper, arguments).stream().findFirst();
  }

  /** The first column of the first row; 0 where there is no row or it is null. */
  public static long number(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    return first(connection, sql, row -> row.getLong(1), arguments).orElse(0L);
  }

  /** How many rows it changed. */
  public static int update(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    try (PreparedStatement statement = prepare(connection, sql, arguments)) {
      return statement.executeUpdate();
    }
  }

  /** Inserts one row; its new id. */
  public static long insert(Connection connection, String sql, @Nullable Object... arguments)
      throws SQLException {
    return number(connection, sql + " RETURNING id", arguments);
  }

  /** Changes the row that the update finds; inserts one where it finds none. */
  public static int put(
      Connection connection, String update, String insert, @Nullable Object... arguments)
      throws SQLException {
    int found = update(connection, update, arguments);
    return found > 0 ? found : update(connection, insert, arguments);
  }

  /** Question marks for that many values. */
  static String places(int count) {
    return String.join(", ", Collections.nCopies(count, "?"));
  }

  static @Nullable Double nullableDouble(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? null : value;
  }

  /** A statement without arguments, as those that change the schema. */
  public static void run(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.executeUpdate(sql);
    }
  }

  /** A file beside that class. */
  public static String resource(Class<?> home, String name) {
    try (InputStream in = home.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("missing in the jar: " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException("unreadable in the jar: " + name, e);
    }
  }

  /** To be closed by the caller; truth is bound as 0 or 1, null as NULL. */
  public static PreparedStatement prepare(
      Connection connection, String sql, @Nullable Object... arguments) throws SQLException {
    PreparedStatement statement = connection.prepareStatement(sql);
    for (int i = 0; i < arguments.length; i++) {
      statement.setObject(i + 1, asStored(arguments[i]));
    }
    return statement;
  }

  /** Truth is stored as 0 or 1. */
  private static @Nullable Object asStored(@Nullable Object argument) {
    return argument instanceof Boolean truth ? (Object) (truth ? 1 : 0) : argument;
  }
}
