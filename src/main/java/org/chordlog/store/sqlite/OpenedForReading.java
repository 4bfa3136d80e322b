package org.chordlog.store.sqlite;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Unreadable;
import org.chordlog.store.sql.Writes;

/** Open for reading, also while a service writes; every change is refused. */
record OpenedForReading(Path file, Readers readers, Unreadable unreadable) implements Opened {
  static OpenedForReading open(Path directory) {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    if (!Files.exists(file)) {
      throw new BadInput("data", directory, "holds no database", "a directory that was used");
    }
    try {
      requireReadable(file);
      return new OpenedForReading(file, new Readers(file), new Unreadable());
    } catch (SQLException e) {
      throw new BadInput("data", directory, Failures.sentence(e), "a healthy database");
    }
  }

  private static void requireReadable(Path file) throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      int version = (int) Sql.number(connection, "PRAGMA user_version");
      Schema.requireOurs(connection, file, version);
      if (version < Schema.VERSION) {
        throw new BadInput(
            "data",
            file,
            "has schema version " + version,
            Schema.VERSION + ": start the service on it once, which brings it up to date");
      }
    }
  }

  @Override
  public Database database() {
    return new Database(readers, Writes.Refused.readingOnly(), unreadable, new SqliteDialect());
  }

  @Override
  public String epoch() {
    return Announced.epoch(file);
  }

  @Override
  public StoreHealth health() {
    return new StoreHealth(
        false,
        "open for reading only",
        Damage.warnings(file),
        new StoreHealth.Queue(0, 0),
        new StoreHealth.Counts(0, 0, 0, 0),
        new StoreHealth.Commits(0, 0),
        Connections.space(file));
  }

  @Override
  public void close() {
    Closing closing = new Closing();
    closing.step(readers::close);
    closing.tell();
  }
}
