package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.chordlog.Await;
import org.chordlog.store.SealExpected;
import org.chordlog.store.SealReport;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A database that somebody edits behind the service's back: every edit is found and named. */
@Tag("slow")
final class SealTest {
  private static final int EDITS = 50;
  private static final long SEED = 20_261_126;

  @TempDir Path folder;
  private Sealed sealed;

  @BeforeEach
  void make() {
    sealed = Sealed.in(folder.resolve("data"));
  }

  @Test
  void whatNobodyTouchedIsWell() throws Exception {
    sealed.goOn(5);
    SealReport report = sealed.report(SealExpected.NOTHING);
    assertEquals(List.of(), report.faults());
    assertTrue(report.newest().seq() > Sealed.READINGS, report::toString);
    assertEquals(List.of(), new SqliteFiles(sealed.directory()).audit());
  }

  @ParameterizedTest
  @EnumSource
  void oneValueChangedInAnyColumnIsFound(SealedTable table) throws Exception {
    List<String[]> columns =
        sealed.ask(
            connection ->
                Sql.list(
                    connection,
                    "SELECT name, type FROM pragma_table_info('" + table.table + "')",
                    row -> new String[] {row.getString(1), row.getString(2)}));
    assertTrue(columns.size() > 1);
    for (String[] column : columns) {
      Sealed edited = sealed.copy(folder.resolve(table + "-" + column[0]));
      long key = edited.ask(c -> Sql.number(c, "SELECT max(key) FROM (" + keyed(table) + ")"));
      edited.edit(
          "UPDATE %s SET %s = %s WHERE rowid_or_key"
              .formatted(table.table, column[0], changed(column[0], column[1]))
              .replace("rowid_or_key", only(table, key)));
      edited.assertFound(table.named(key) + " was ");
    }
  }

  private static String keyed(SealedTable table) {
    return table.keys().replaceFirst("SELECT (.*) FROM", "SELECT $1 AS key FROM");
  }

  private static String only(SealedTable table, long key) {
    return table == SealedTable.REVISION
        ? "job_id = %d AND revision = %d".formatted(key / 1_000_000, key % 1_000_000)
        : "id = " + key;
  }

  /** The least there is: one more, the last bit of a double near 1, one letter. */
  private static String changed(String column, String type) {
    return switch (type) {
      case "INTEGER" -> "coalesce(%s, 0) + 1".formatted(column);
      case "REAL" ->
          "CASE WHEN abs(%1$s) < 1e300 THEN %1$s * (1 + 2.3e-16) + (%1$s = 0) * 1e-9"
                  .formatted(column)
              + " ELSE 7.0 END";
      default -> "coalesce(" + column + ", '') || '.'";
    };
  }

  @ParameterizedTest
  @EnumSource
  void aRowDeletedIsFound(SealedTable table) throws Exception {
    long key = sealed.ask(c -> Sql.number(c, "SELECT max(key) FROM (" + keyed(table) + ")"));
    sealed.edit("DELETE FROM " + table.table + " WHERE " + only(table, key));
    sealed.assertFound(table.named(key) + " was removed");
  }

  @Test
  void twoRowsThatChangedPlacesAreFound() throws Exception {
    sealed.edit(
        "UPDATE reading SET id = -1 WHERE id = 7",
        "UPDATE reading SET id = 7 WHERE id = 8",
        "UPDATE reading SET id = 8 WHERE id = -1");
    sealed.assertFound("reading 7 was altered", "reading 8 was altered");
    assertEquals(2, sealed.faults().size());
  }

  @Test
  void aRowPutInIsFound() throws Exception {
    sealed.edit(
        "INSERT INTO exclusion SELECT 99, 5, job_id, 1, reason, at_micros, made_by FROM exclusion"
            + " LIMIT 1",
        "CREATE TEMP TABLE one AS SELECT * FROM reading WHERE id = 9",
        "UPDATE one SET id = 1000, station_sequence = 1000",
        "INSERT INTO reading SELECT * FROM one");
    sealed.assertFound("exclusion 99 was put in", "reading 1000 was put in");
    assertEquals(2, sealed.faults().size());
  }

  /** Each in a value that a customer pays on, or in who did what. */
  @Test
  void ofFiftyRowsEditedAtRandomAllAreNamed() throws Exception {
    sealed.goOn(200);
    List<Integer> ids = new ArrayList<>();
    for (int id = 1; id <= Sealed.READINGS + 200; id++) {
      ids.add(id);
    }
    Random random = new Random(SEED);
    Collections.shuffle(ids, random);
    List<Integer> edited = ids.subList(0, EDITS);
    String[] columns = {"value_nm", "depth_nm", "radius_mm", "decision", "wall_micros", "raw_hex"};
    List<String> statements = new ArrayList<>();
    for (int id : edited) {
      String column = columns[random.nextInt(columns.length)];
      String type =
          column.endsWith("mm") ? "REAL" : column.matches(".*(nm|micros)") ? "INTEGER" : "";
      statements.add(
          "UPDATE reading SET %s = %s WHERE id = %d".formatted(column, changed(column, type), id));
    }
    sealed.edit(statements.toArray(String[]::new));
    List<String> faults = sealed.faults();
    assertEquals(EDITS, faults.size());
    for (int id : edited) {
      assertTrue(
          faults.stream().anyMatch(each -> each.contains("reading " + id + " was altered")),
          () -> id + " in " + faults);
    }
  }

  private String python(Path database) throws Exception {
    Path said = Files.createTempFile(folder, "said", ".txt");
    Process process =
        new ProcessBuilder("python3", "src/docs/check-seal.py", database.toString())
            .redirectErrorStream(true)
            .redirectOutput(said.toFile())
            .start();
    Await.end(process);
    return process.exitValue() + " " + Files.readString(said, StandardCharsets.UTF_8);
  }

  /** The form as documented, by a program that shares no line with this one. */
  @Test
  void aCheckInPythonFindsTheSame() throws Exception {
    String newest = sealed.report(SealExpected.NOTHING).newest().anchor();
    String well = python(sealed.file());
    assertTrue(well.startsWith("0 all is well") && well.contains(newest), well);
    sealed.edit(
        "UPDATE reading SET upper_mm = upper_mm * (1 + 2.3e-16) WHERE id = 11",
        "DELETE FROM change WHERE id = 2");
    String found = python(sealed.file());
    assertTrue(found.startsWith("1 ") && found.contains("reading 11 was altered"), found);
    assertTrue(found.contains("change 2 was altered or removed"), found);
    assertEquals(2, found.lines().count(), found);
  }
}
