package org.chordlog.store.sqlite;

import java.io.File;
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
    return open(directory, Schema.VERSION);
  }

  /** Of an older layout too: enough for a copy as it is. */
  static OpenedForReading openToCopy(Path directory) {
    return open(directory, 1);
  }

  private static OpenedForReading open(Path directory, int least) {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    requireThere(directory, file);
    try (Connection connection = Connections.reader(file)) {
      requireVersion(connection, file, least);
      return new OpenedForReading(file, new Readers(file), new Unreadable());
    } catch (SQLException e) {
      throw unreadable(file, e);
    }
  }

  private static void requireThere(Path directory, Path file) {
    if (!Files.isDirectory(directory)) {
      throw refused(
          directory,
          Files.exists(directory) ? "is not a folder" : "does not exist",
          "the data directory of a service");
    }
    if (!Files.exists(file)) {
      throw refused(directory, "holds no database", "the data directory of a service");
    }
    if (file.toFile().length() == 0 && new File(file + "-wal").length() == 0) {
      throw refused(file, "is empty", "a database; 'restore' puts a backup in its place");
    }
  }

  private static void requireVersion(Connection connection, Path file, int least)
      throws SQLException {
    int version = (int) Sql.number(connection, "PRAGMA user_version");
    Schema.requireOurs(connection, file, version);
    if (version < least) {
      throw refused(
          file,
          "was written by an older Chordlog (layout " + version + ")",
          "layout " + least + ": start the service on it, which brings it up to date");
    }
  }

  private static BadInput unreadable(Path file, SQLException e) {
    if (!Files.isReadable(file)) {
      return refused(file, "may not be read by this user", "a file that can be read");
    }
    // The log of commits beside it is read through a file that SQLite makes there.
    return Failures.ofPermission(e)
        ? refused(
            file,
            "can't be read in a folder that can't be written",
            "a copy of the folder with all its files, where files can be written")
        : refused(file, "can't be read: " + Failures.sentence(e), "a database that can be read");
  }

  private static BadInput refused(Path what, String problem, String allowed) {
    return new BadInput("data", what, problem, allowed);
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
