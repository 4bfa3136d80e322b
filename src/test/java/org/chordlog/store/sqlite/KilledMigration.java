package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.store.sql.Sql;

/**
 * A process that brings a database to an invented next version, which rewrites every reading, and
 * may be killed meanwhile. Argument: the file.
 */
final class KilledMigration {
  static final int VERSION = Schema.VERSION + 1;

  private static final String SCRIPT =
      """
      ALTER TABLE reading ADD COLUMN more TEXT NOT NULL DEFAULT '';
      UPDATE reading SET more = 'of ' || id || ' ' || hex(zeroblob(60));
      CREATE INDEX reading_by_more ON reading (more);
      """;

  private KilledMigration() {}

  public static void main(String[] arguments) throws SQLException {
    try (Connection connection = Connections.writer(Path.of(arguments[0]))) {
      Schema.migrate(connection, VERSION, step -> target -> Sql.run(target, SCRIPT));
    }
  }
}
