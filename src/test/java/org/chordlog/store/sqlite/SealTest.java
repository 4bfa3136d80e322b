package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.chordlog.Await;
import org.chordlog.store.SealExpected;
import org.chordlog.store.SealReport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A database that somebody edits behind the service's back: every edit is found and named. */
final class SealTest {
  private static final int EDITS = 50;
  private static final long SEED = 20_261_126;

  @TempDir Path folder;
  private Sealed sealed;

  @BeforeEach
  void make() {
    sealed = Sealed.in(folder.resolve("data"));
  }

  private void assertFound(Sealed in, String... words) {
    List<String> faults = in.faults();
    for (String each : words) {
      assertTrue(faults.stream().anyMatch(said -> said.contains(each)), each + ": " + faults);
    }
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
      assertFound(edited, table.named(key) + " was ");
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
    assertFound(sealed, table.named(key) + " was removed");
  }

  @Test
  void twoRowsThatChangedPlacesAreFound() throws Exception {
    sealed.edit(
        "UPDATE reading SET id = -1 WHERE id = 7",
        "UPDATE reading SET id = 7 WHERE id = 8",
        "UPDATE reading SET id = 8 WHERE id = -1");
    assertFound(sealed, "reading 7 was altered", "reading 8 was altered");
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
    assertFound(sealed, "exclusion 99 was put in", "reading 1000 was put in");
    assertEquals(2, sealed.faults().size());
  }

  @Test
  void entriesOfTheChainThatWereEditedRemovedOrSwappedAreFound() throws Exception {
    Sealed altered = sealed.copy(folder.resolve("altered"));
    altered.edit("UPDATE seal SET at_micros = at_micros + 1 WHERE seq = 12");
    assertFound(altered, "entry 12 does not follow from entry 11");
    Sealed removed = sealed.copy(folder.resolve("removed"));
    removed.edit("DELETE FROM seal WHERE seq = 12");
    assertFound(removed, "entries 12 to 12 were removed");
    Sealed swapped = sealed.copy(folder.resolve("swapped"));
    swapped.edit(
        "UPDATE seal SET seq = -1 WHERE seq = 12",
        "UPDATE seal SET seq = 12 WHERE seq = 13",
        "UPDATE seal SET seq = 13 WHERE seq = -1");
    assertFound(swapped, "entry 12 does not follow", "entry 13 does not follow");
  }

  private static void cutEnd(Sealed of, int firstGone) throws Exception {
    long seq = of.ask(c -> entryOf(c, firstGone));
    of.edit(
        "DELETE FROM reading WHERE id >= " + firstGone,
        "DELETE FROM seal WHERE seq >= " + seq,
        "DELETE FROM change WHERE id > 3",
        "DELETE FROM exclusion",
        "DELETE FROM event_withdrawal",
        "DELETE FROM job_event",
        "DELETE FROM specification_revision WHERE revision > 1");
  }

  private static long entryOf(Connection connection, long reading) throws SQLException {
    return Sql.number(
        connection,
        "SELECT seq FROM seal WHERE substr(body, 1, 9) = unhex(printf('01%016x', ?))",
        reading);
  }

  @Test
  void aCutEndIsFoundByTheCheckpointsAndWithoutThemByAnAnchor() throws Exception {
    String anchor = sealed.report(SealExpected.NOTHING).newest().anchor();
    cutEnd(sealed, 30);
    assertFound(sealed, "are gone: the end was cut off");
    Files.delete(sealed.checkpoints());
    SealExpected known = new SealExpected(List.of(SealExpected.Anchor.of(anchor)), "");
    List<String> faults = sealed.report(known).faults();
    assertTrue(faults.stream().anyMatch(each -> each.contains("before the anchor")), "" + faults);
  }

  @Test
  void aChainMadeAnewIsFoundByTheCheckpoints() throws Exception {
    sealed.edit("UPDATE reading SET value_nm = value_nm + 1 WHERE id = 5");
    rebuild(sealed);
    assertFound(sealed, "the chain was made anew");
  }

  /** What somebody who knows this program would do next. */
  private static void rebuild(Sealed of) throws Exception {
    boolean unused =
        of.ask(
            connection -> {
              SealEntry before = SealEntry.none(SealEntry.uuid(connection));
              for (SealEntry each :
                  Sql.list(connection, SealEntry.SELECT + "ORDER BY seq", SealEntry::map)) {
                before = before.next(each.atMicros(), asNow(connection, each.body()));
                int gone = Sql.update(connection, "DELETE FROM seal WHERE seq = ?", each.seq());
                assertEquals(1, gone);
                before.insert(connection);
              }
              return true;
            });
  }

  private static byte[] asNow(Connection connection, byte[] records) throws SQLException {
    ByteBuffer body = ByteBuffer.wrap(records);
    SealBody made = new SealBody();
    while (body.hasRemaining()) {
      SealedTable table = Objects.requireNonNull(SealedTable.find(body.get()));
      long key = body.getLong();
      body.position(body.position() + Hashes.BYTES);
      made.add(
          table,
          key,
          Sql.first(connection, table.selectOne(), row -> new RowBytes().hash(row), key)
              .orElseThrow());
    }
    return made.take();
  }

  @Test
  void anOlderFilePutInPlaceByHandIsAFaultAndARestoreIsNot() throws Exception {
    Path backup = folder.resolve("backup.db");
    new SqliteFiles(sealed.directory()).backup(backup);
    sealed.goOn(10);
    Sealed byHand = sealed.copy(folder.resolve("by-hand"));
    Files.copy(backup, byHand.file(), StandardCopyOption.REPLACE_EXISTING);
    assertFound(byHand, "an older file put in place without a restore");

    var unused = new SqliteFiles(sealed.directory()).restore(backup);
    sealed.goOn(3);
    SealReport report = sealed.report(SealExpected.NOTHING);
    assertEquals(List.of(), report.faults());
    assertTrue(report.notes().toString().contains("a backup was restored"), report::toString);
  }

  @Test
  void aForgedFileThatIsRestoredByCommandHasAnotherHistory() throws Exception {
    Sealed forged = sealed.copy(folder.resolve("forged"));
    forged.edit("UPDATE reading SET value_nm = value_nm + 1 WHERE id = 5");
    rebuild(forged);
    Path backup = folder.resolve("forged.db");
    new SqliteFiles(forged.directory()).backup(backup);
    var unused = new SqliteFiles(sealed.directory()).restore(backup);
    assertFound(sealed, "has another history than every checkpoint before it");
  }

  @Test
  void anotherKeyAndEditedLinesOfTheCheckpointsAreFound() throws Exception {
    String key = sealed.report(SealExpected.NOTHING).keyFingerprint();
    Sealed other = sealed.copy(folder.resolve("other"));
    Files.delete(other.directory().resolve(SealKey.FILE_NAME));
    other.goOn(1);
    assertFound(other, "another key signs");
    Files.delete(other.checkpoints());
    other.goOn(1);
    SealReport report = other.report(new SealExpected(List.of(), key));
    assertTrue(report.faults().toString().contains("not by " + key), report::toString);

    List<String> lines = Files.readAllLines(sealed.checkpoints());
    List<String> edited = new ArrayList<>(lines);
    edited.set(0, lines.get(0).replace("NEW", "START"));
    Files.write(sealed.checkpoints(), edited);
    assertFound(sealed, "checkpoint line 1 was altered");
    Files.write(sealed.checkpoints(), lines.subList(1, lines.size()));
    assertFound(sealed, "lines before line 1 were altered or removed");
  }

  @Test
  void theKeyIsReadByItsOwnerOnly() throws Exception {
    Path key = sealed.directory().resolve(SealKey.FILE_NAME);
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(key)));
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
