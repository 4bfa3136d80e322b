package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntFunction;
import org.chordlog.measure.BadInput;
import org.chordlog.store.sql.JobSearchText;
import org.chordlog.store.sql.Sql;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The database's layout: numbered steps, each in one transaction. The script of a step that was
 * released is never changed; a change of the layout is a new step.
 */
final class Schema {
  /** Marks a file as ours in its header ("chrd"). */
  static final int APPLICATION_ID = 0x63687264;

  private static final Logger LOG = LoggerFactory.getLogger(Schema.class);

  private static final List<Step> STEPS =
      List.of(
          released(1),
          released(2).then(JobSearchText::writeAll),
          released(3),
          released(4).then(SealedHistory::writeAll),
          released(5),
          released(6),
          released(7),
          released(8),
          released(9));

  static final int VERSION = STEPS.size();

  /** First release without the WAL-reset fault. */
  private static final String LEAST_SQLITE = "3.51.3";

  /** What brings a database from one version to the next, within a transaction. */
  interface Step {
    void run(Connection connection) throws SQLException;

    default Step then(Step next) {
      return connection -> {
        run(connection);
        next.run(connection);
      };
    }
  }

  private Schema() {}

  private static Step released(int version) {
    return script(Sql.resource(Schema.class, "schema-" + version + ".sql"));
  }

  static Step script(String sql) {
    return connection -> Sql.run(connection, sql);
  }

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
    migrate(connection, VERSION, next -> STEPS.get(next - 1));
  }

  /** Brings it to that version, step by step; {@code steps} gives the step to each version. */
  static void migrate(Connection connection, int newest, IntFunction<Step> steps)
      throws SQLException {
    int found = version(connection);
    for (int next = found + 1; next <= newest; next++) {
      if (found > 0) {
        LOG.info("bringing the database to layout {}; this may take some minutes", next);
      }
      step(connection, next, steps.apply(next));
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
    if (version < 0) {
      throw new BadInput(
          "data", file, "has layout " + version, "1 to " + VERSION + ": restore a backup");
    }
    if (version > VERSION) {
      throw new BadInput(
          "data",
          file,
          "was written by a newer Chordlog (layout " + version + ")",
          "layouts up to " + VERSION + ": install the newer Chordlog, or restore an older backup");
    }
  }

  private static void step(Connection connection, int version, Step step) throws SQLException {
    Sql.run(connection, "BEGIN IMMEDIATE");
    try {
      step.run(connection);
      Sql.run(connection, "PRAGMA application_id = " + APPLICATION_ID);
      Sql.run(connection, "PRAGMA user_version = " + version);
      Sql.run(connection, "COMMIT");
    } catch (SQLException e) {
      rollBack(connection, e);
      throw e;
    }
  }

  /** A full disk may have ended the transaction already (sqlite.org/lang_transaction.html, 3). */
  private static void rollBack(Connection connection, SQLException cause) {
    try {
      Sql.run(connection, "ROLLBACK");
    } catch (SQLException e) {
      cause.addSuppressed(e);
    }
  }

  private static int[] numbers(String version) {
    return Arrays.stream(version.split("\\.", -1)).mapToInt(Integer::parseInt).toArray();
  }
}
