package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.store.Kept;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A backup over data that can't be read. */
final class RestoringTest {
  @TempDir Path directory;
  private Path file;
  private Path backup;
  private SqliteFiles files;

  @BeforeEach
  void backup() {
    Path data = directory.resolve("data");
    file = data.resolve(SqliteStore.FILE_NAME);
    backup = directory.resolve("copy.db");
    files = new SqliteFiles(data);
    try (SqliteStore store = SqliteStore.open(data)) {
      assertEquals(1, store.readings().append(Kept.first(store)).join().id());
    }
    files.backup(backup);
  }

  @Test
  void aDatabaseThatAnotherProgramHoldsIsNotReplaced() throws Exception {
    try (Connection other = Connections.single(file)) {
      Sql.run(other, "BEGIN EXCLUSIVE");
      BadInput e = assertThrows(BadInput.class, () -> files.restore(backup));
      assertTrue(e.toString().contains("another program holds the database locked"), e::toString);
    }
    nothingWasMovedAside();
  }

  @Test
  void aDamagedOneIsMovedAsideAndReplaced() throws Exception {
    Files.writeString(file, "no database, but words ".repeat(1_000));
    Path aside = files.restore(backup).setAside().orElseThrow();
    assertTrue(Files.readString(aside.resolve(SqliteStore.FILE_NAME)).startsWith("no database"));
    assertEquals(List.of(), files.audit());
  }

  /** The key signs that the data were restored: without it nothing is moved. */
  @Test
  void withoutTheKeyThatIsElsewhereNothingIsReplaced() throws Exception {
    Path key = directory.resolve("key.pem");
    files.sealKeyAt(key);
    Files.delete(key);
    BadInput e = assertThrows(BadInput.class, () -> files.restore(backup));
    assertTrue(e.toString().contains("key.pem can't be read"), e::toString);
    nothingWasMovedAside();
  }

  private void nothingWasMovedAside() throws Exception {
    try (var left = Files.list(directory.resolve("data"))) {
      assertTrue(left.noneMatch(Files::isDirectory), "nothing was moved aside");
    }
  }
}
