package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.store.sql.Sql;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** How often the history of a database was begun anew. */
final class Incarnation {
  private static final Logger LOG = LoggerFactory.getLogger(Incarnation.class);

  /** Of the database's layout; before it, every database was of its first. */
  private static final int SINCE_VERSION = 8;

  private Incarnation() {}

  static int of(Connection connection) throws SQLException {
    return (int) Sql.number(connection, "SELECT incarnation FROM identity");
  }

  /** The new one. */
  static int raise(Connection connection, int above) throws SQLException {
    int next = Math.max(above, of(connection)) + 1;
    int unused = Sql.update(connection, "UPDATE identity SET incarnation = ?", next);
    return next;
  }

  /**
   * Of a copy that will replace a file: higher than that of both, so that it is not taken for the
   * history that is replaced. A copy of an older layout has the first one, and is told from it by
   * its chain of hashes.
   */
  static void raise(Path copy, Path replaced) throws IOException {
    try (Connection connection = Connections.single(copy)) {
      if (Schema.version(connection) >= SINCE_VERSION) {
        int unused = raise(connection, ofReplaced(replaced));
      }
    } catch (SQLException e) {
      throw new IOException("the copy can't be marked as restored", e);
    }
  }

  private static int ofReplaced(Path file) {
    if (!Files.exists(file)) {
      return 0;
    }
    try (Connection connection = Connections.reader(file)) {
      return Schema.version(connection) >= SINCE_VERSION ? of(connection) : 0;
    } catch (SQLException e) {
      LOG.atDebug().setCause(e).log("what is replaced can't be read");
      return 0;
    }
  }
}
