package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreException;

/** A checked copy of a database that is in use: written aside, checked, synced, then renamed. */
final class Backup {
  private Backup() {}

  static void write(Path file, Path target) {
    if (Files.exists(target)) {
      throw new BadInput("target", target, "exists", "a new file");
    }
    Path part = target.resolveSibling(target.getFileName() + ".part");
    try {
      Files.deleteIfExists(part);
      copy(file, part);
      sync(part);
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
      syncDirectoryOf(target);
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
    try (Connection connection = Connections.reader(part)) {
      String verdict =
          Sql.first(connection, "PRAGMA quick_check(1)", row -> row.getString(1)).orElse("nothing");
      if (!verdict.equals("ok")) {
        throw new StoreException("the backup is not sound: " + verdict, null);
      }
    }
  }

  /** So that the new name survives a power cut too. */
  private static void syncDirectoryOf(Path target) throws IOException {
    Path directory = target.toAbsolutePath().getParent();
    if (directory != null) {
      sync(directory);
    }
  }

  private static void sync(Path path) throws IOException {
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }
}
