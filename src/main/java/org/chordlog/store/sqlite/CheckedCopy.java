package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;

/**
 * Copies a database that may be in use. The copy is written under another name, checked, synced to
 * disk, and only then renamed to its target. Any thread.
 */
final class CheckedCopy {
  private CheckedCopy() {}

  static void write(Path file, Path target) {
    if (Files.exists(target)) {
      throw new BadInput("FILE", target, "exists", "a new file");
    }
    try {
      write(file, target, newPart(target));
    } catch (IOException e) {
      throw new BadInput("FILE", target, FileTrouble.writing(e), "a folder that can be written");
    } catch (SQLException e) {
      throw new StoreException("the backup could not be written: " + Failures.sentence(e), e);
    }
  }

  /** A new file beside the target, that only its owner may read; no other program has its name. */
  static Path newPart(Path target) throws IOException {
    Path folder = target.toAbsolutePath().getParent();
    if (folder == null) {
      throw new IOException("it is a root directory");
    }
    return Files.createTempFile(folder, target.getFileName() + ".", ".part");
  }

  private static void write(Path file, Path target, Path part) throws IOException, SQLException {
    try {
      copy(file, part);
      BackupSeal.put(part);
      SyncedFiles.sync(part);
      SyncedFiles.rename(part, target);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static void copy(Path file, Path part) throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      Sql.update(connection, "VACUUM INTO ?", part.toString());
    }
    try (Connection connection = Connections.immutable(part)) {
      String found = Damage.find(connection);
      if (!found.isEmpty()) {
        throw new StoreException("the backup is damaged: " + found, null);
      }
    }
  }
}
