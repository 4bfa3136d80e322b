package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said of a place that can't be read, and that an older one can be backed up. */
final class OpenedForReadingTest {
  @TempDir Path directory;

  private static void refused(Path data, String words) {
    BadInput e = assertThrows(BadInput.class, () -> OpenedForReading.open(data));
    assertTrue(e.toString().contains(words), e::toString);
  }

  private Path file() {
    return directory.resolve(SqliteStore.FILE_NAME);
  }

  private void putReleased() throws Exception {
    try (InputStream in = Released.class.getResourceAsStream("released-1-full.db")) {
      Files.copy(Objects.requireNonNull(in), file());
    }
  }

  @Test
  void whatIsNoDataDirectoryIsSaid() throws Exception {
    refused(directory.resolve("none"), "none does not exist");
    refused(Files.createFile(directory.resolve("file")), "file is not a folder");
    refused(directory, "holds no database");
  }

  /** Starting the service on it would bring nothing up to date, but begin anew. */
  @Test
  void anEmptyFileIsNoDatabaseOfAnOlderProgram() throws Exception {
    Files.createFile(file());
    refused(directory, "chordlog.db is empty; allowed: a database; 'restore' puts a backup");
  }

  @Test
  void aDamagedFileIsSaidToBeDamaged() throws Exception {
    Files.writeString(file(), "no database, but words ".repeat(1_000));
    refused(directory, "chordlog.db can't be read: the database file is damaged");
  }

  /** The newer program may be there already when somebody thinks of a backup. */
  @Test
  void anOlderDatabaseIsRefusedButForABackup() throws Exception {
    putReleased();
    refused(directory, "was written by an older Chordlog (layout 1); allowed: layout");
    Path backup = directory.resolve("before.db");
    new SqliteFiles(directory).backup(backup);
    Path elsewhere = directory.resolve("elsewhere");
    assertTrue(new SqliteFiles(elsewhere).restore(backup).verified());
    try (SqliteStore store = SqliteStore.open(elsewhere, Some.KEEPING_ALL)) {
      assertEquals(24, store.readings().all(0, 100).size());
    }
    assertEquals(List.of(), new SqliteFiles(elsewhere).audit());
    refused(directory, "layout 1");
  }
}
