package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SqliteStoreTest {
  @TempDir Path directory;

  @Test
  void aReadingIsOnDiskWhenItsFutureCompletes() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory);
        Connection other = Connections.reader(directory.resolve(SqliteStore.FILE_NAME))) {
      Reading kept = store.readings().append(Kept.first(store)).join();
      long seen = Sql.number(other, "SELECT depth_nm FROM reading WHERE id = ?", kept.id());
      assertEquals(kept.depthNm(), seen);
    }
  }

  @Test
  void aSecondInstanceIsRefused() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(directory));
      assertTrue(e.toString().contains("in use by another instance"), e::toString);
      assertEquals("", store.health().fault());
    }
  }

  @Test
  void aNewerSchemaIsRefusedAndLeftAsItWas() throws Exception {
    SqliteStore.open(directory).close();
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    try (Connection connection = Connections.writer(file)) {
      Sql.run(connection, "PRAGMA user_version = 99");
    }
    BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(directory));
    assertTrue(e.toString().contains("newer Chordlog (layout 99)"), e::toString);
  }
}
