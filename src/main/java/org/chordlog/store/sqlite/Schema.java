package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.function.IntFunction;
import org.chordlog.measure.BadInput;

/** The database's layout: numbered steps, each in one transaction. */
final class Schema {
  /** Marks a file as ours in its header ("chrd"). */
  static final int APPLICATION_ID = 0x63687264;

  static final int VERSION = 1;

  /** First release without the WAL-reset fault. */
  private static final String LEAST_SQLITE = "3.51.3";

  private Schema() {}

  static void requireSoundSqlite(Connection connection) throws SQLException {
    String version =
        Sql.first(connection, "SELECT sqlite_version()", row -> row.getString(1)).orElse("0");
    if (Arrays.compare(numbers(version), numbers(LEAST_SQLITE)) < 0) {
      throw new BadInput("SQLite", version, "can lose commits", LEAST_SQLITE + " or newer");
    }
  }

  /** Brings the file to {@link #VERSION}; refuses files that are not ours or newer. */
  static void migrate(Connection connection, Path file) throws SQLException {
    requireOurs(connection, file, version(connection));
    migrate(connection, VERSION, next -> Sql.resource("schema-" + next + ".sql"));
  }

  /** Brings it to that version by the script of each step. */
  static void migrate(Connection connection, int newest, IntFunction<String> scripts)
      throws SQLException {
    for (int next = version(connection) + 1; next <= newest; next++) {
      step(connection, next, scripts.apply(next));
    }
  }

  static int version(Connection connection) throws SQLException {
    return (int) Sql.number(connection, "PRAGMA user_version");
  }

  static void requireOurs(Connection connection, Path file, int version) throws SQLException {
    boolean empty = Sql.number(connection, "SELECT count(*) FROM sqlite_schema") == 0;
    if (!empty && Sql.number(connection, "PRAGMA application_id") != APPLICATION_ID) {
      throw new BadInput("data", file, "is another program's database", "a directory of its own");
    }
    if (version > VERSION) {
      throw new BadInput(
          "data",
          file,
          "has schema version " + version + ", written by a newer Chordlog",
          "up to version " + VERSION + ": install the newer Chordlog, or restore an older backup");
    }
  }

  private static void step(Connection connection, int version, String script) throws SQLException {
    Sql.run(connection, "BEGIN IMMEDIATE");
    try {
      Sql.run(connection, script);
      Sql.run(connection, "PRAGMA application_id = " + APPLICATION_ID);
      Sql.run(connection, "PRAGMA user_version = " + version);
      Sql.run(connection, "COMMIT");
    } catch (SQLException e) {
      Sql.run(connection, "ROLLBACK");
      throw e;
    }
  }

  private static int[] numbers(String version) {
    return Arrays.stream(version.split("\\.", -1)).mapToInt(Integer::parseInt).toArray();
  }
}
