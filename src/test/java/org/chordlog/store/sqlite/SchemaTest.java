package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SchemaTest {
  @TempDir Path directory;

  /** A file of every released schema version opens, and what it holds is there. */
  @ParameterizedTest
  @ValueSource(ints = {1})
  void aFileOfEachReleasedVersionOpens(int version) throws Exception {
    try (InputStream in = SchemaTest.class.getResourceAsStream("released-" + version + ".db")) {
      assertNotNull(in);
      Files.copy(in, directory.resolve(SqliteStore.FILE_NAME));
    }
    try (SqliteStore store = SqliteStore.open(directory)) {
      List<Reading> readings = store.readings().all(0, 100);
      assertEquals(20, readings.size());
      assertEquals(Some.reading("A", 7, 1, 1).withId(7), readings.get(6));
      assertEquals(Some.setUp(store.gauges().bridges().get(0)), store.readings().setUp(1).get());
      assertEquals(300, store.traces().range("A", 1, 300, 1_000).size());
    }
    assertEquals(List.of(), new SqliteFiles(directory).audit());
  }

  /** The last statement of a step fails as if the process had died: nothing of the step stays. */
  @Test
  void anInterruptedStepLeavesTheFileUsable() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    Reading kept;
    try (SqliteStore store = SqliteStore.open(directory)) {
      kept = store.readings().append(Kept.first(store)).join();
    }
    try (Connection connection = Connections.writer(file)) {
      String script = "ALTER TABLE reading ADD COLUMN more TEXT; DELETE FROM reading; no sense;";
      assertThrows(SQLException.class, () -> Schema.migrate(connection, 2, step -> script));
      assertEquals(1, Schema.version(connection));
    }
    try (SqliteStore store = SqliteStore.open(directory)) {
      assertEquals(kept, store.readings().find(kept.id()).orElseThrow());
    }
  }

  @Test
  void anotherProgramsDatabaseIsRefusedAndLeftAlone() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Sql.run(connection, "CREATE TABLE theirs (x)");
    }
    BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(directory));
    assertTrue(e.toString().contains("another program"), e::toString);
  }

  @Test
  void everyTableIsStrict() throws Exception {
    SqliteStore.open(directory).close();
    try (Connection connection = Connections.reader(directory.resolve(SqliteStore.FILE_NAME))) {
      assertEquals(
          List.of(),
          Sql.list(
              connection,
              "SELECT name FROM pragma_table_list WHERE strict = 0 AND name NOT LIKE 'sqlite_%'",
              row -> row.getString(1)));
    }
  }
}
