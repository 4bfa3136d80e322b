package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreException;

/** A checked copy of a database that is in use: written aside, checked, synced, then renamed. */
final class CheckedCopy {
  private CheckedCopy() {}

  static void write(Path file, Path target) {
    if (Files.exists(target)) {
      throw new BadInput("target", target, "exists", "a new file");
    }
    Path part = target.resolveSibling(target.getFileName() + ".part");
    try {
      Files.deleteIfExists(part);
      copy(file, part);
      SyncedFiles.sync(part);
      SyncedFiles.rename(part, target);
    } catch (IOException e) {
      throw new BadInput("target", target, "can't be written (" + e + ")", "a writable place");
    } catch (SQLException e) {
      throw new StoreException("no backup: " + e.getMessage(), e);
    }
  }

  private static void copy(Path file, Path part) throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      Sql.update(connection, "VACUUM INTO ?", part.toString());
    }
    try (Connection connection = Connections.immutable(part)) {
      String found = Damage.find(connection);
      if (!found.isEmpty()) {
        throw new StoreException("the backup is not sound: " + found, null);
      }
    }
  }
}
