package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import org.chordlog.measure.BadInput;
import org.chordlog.store.sql.Sql;

/** The layout of a plant's database: numbered steps, of which a released one is never changed. */
final class PlantSchema {
  static final int VERSION = 2;

  private static final String EXISTS =
      "SELECT count(*) FROM pg_catalog.pg_tables WHERE schemaname = 'plant' AND tablename ="
          + " 'version'";

  private PlantSchema() {}

  /** Brings it from any version up to this one, in one transaction; 0: there is none yet. */
  static void migrate(Connection connection) throws SQLException {
    connection.setAutoCommit(false);
    try {
      // two at the same time wait for each other
      Sql.list(connection, "SELECT pg_advisory_xact_lock(6363726400)", row -> true);
      int found = version(connection);
      refuseNewer(found);
      for (int next = found + 1; next <= VERSION; next++) {
        step(connection, next);
      }
      connection.commit();
    } catch (SQLException | RuntimeException e) {
      connection.rollback();
      throw e;
    } finally {
      connection.setAutoCommit(true);
    }
  }

  private static void step(Connection connection, int version) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute(Sql.resource(PlantSchema.class, "plant-" + version + ".sql"));
    }
    Sql.update(connection, "DELETE FROM plant.version");
    Sql.update(connection, "INSERT INTO plant.version VALUES (?, plant.now_micros())", version);
  }

  private static int version(Connection connection) throws SQLException {
    return Sql.number(connection, EXISTS) == 0
        ? 0
        : (int) Sql.number(connection, "SELECT version FROM plant.version");
  }

  /** {@link BadInput} where this program can't work with the database as it is. */
  static void require(Connection connection) throws SQLException {
    int found = version(connection);
    refuseNewer(found);
    if (found < VERSION) {
      throw new BadInput(
          "database",
          connection.getCatalog(),
          found == 0 ? "is not the database of a plant" : "has schema version " + found,
          "version " + VERSION + ": run 'chordlog plant create' on it, which brings it up to date");
    }
  }

  private static void refuseNewer(int found) {
    if (found > VERSION) {
      throw new BadInput(
          "database",
          "the plant's",
          "has schema version " + found + ", made by a newer Chordlog",
          "up to version " + VERSION + ": install the newer Chordlog here");
    }
  }
}
