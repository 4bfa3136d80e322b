package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.chordlog.measure.BadInput;

/** Replaces a database that nobody uses by a checked backup. */
final class Restoring {
  private Restoring() {}

  /** Returns the folder that now holds the former data, if there was any. */
  static Optional<Path> restore(Path directory, Path source) {
    requireSound(source);
    DataLock lock = DataLock.take(directory);
    try {
      return put(source, directory.resolve(SqliteStore.FILE_NAME));
    } catch (IOException e) {
      throw new BadInput(
          "data", directory, "can't be written (" + e + ")", "a folder that can be written");
    } finally {
      lock.close();
    }
  }

  private static Optional<Path> put(Path source, Path file) throws IOException {
    Path part = file.resolveSibling(file.getFileName() + ".part");
    Files.deleteIfExists(part);
    Files.copy(source, part);
    SyncedFiles.sync(part);
    Optional<Path> aside =
        Files.exists(file)
            ? Optional.of(SyncedFiles.setAside(file, "replaced-"))
            : Optional.empty();
    SyncedFiles.rename(part, file);
    return aside;
  }

  private static void requireSound(Path source) {
    if (!Files.isRegularFile(source)) {
      throw new BadInput("backup", source, "is not a file", "a backup made by 'backup'");
    }
    try (Connection connection = Connections.immutable(source)) {
      Schema.requireOurs(connection, source, (int) Sql.number(connection, "PRAGMA user_version"));
      String found = Damage.find(connection);
      if (!found.isEmpty()) {
        throw new BadInput("backup", source, "is damaged: " + found, "an undamaged backup");
      }
    } catch (SQLException e) {
      throw new BadInput(
          "backup", source, "can't be read: " + e.getMessage(), "an undamaged backup");
    }
  }
}
