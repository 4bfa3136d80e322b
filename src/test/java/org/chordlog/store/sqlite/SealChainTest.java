package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.chordlog.measure.BadInput;
import org.chordlog.store.SealExpected;
import org.chordlog.store.SealReport;
import org.chordlog.store.sql.Hashes;
import org.chordlog.store.sql.RowBytes;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The chain itself and its checkpoints, edited by somebody who knows this program: an end cut off,
 * a chain made anew, older and forged files, another key.
 */
final class SealChainTest {
  @TempDir Path folder;
  private Sealed sealed;

  @BeforeEach
  void make() {
    sealed = Sealed.in(folder.resolve("data"));
  }

  @Test
  void entriesOfTheChainThatWereEditedRemovedOrSwappedAreFound() throws Exception {
    Sealed altered = sealed.copy(folder.resolve("altered"));
    altered.edit("UPDATE seal SET at_micros = at_micros + 1 WHERE seq = 12");
    altered.assertFound("entry 12 does not follow from entry 11");
    Sealed removed = sealed.copy(folder.resolve("removed"));
    removed.edit("DELETE FROM seal WHERE seq = 12");
    removed.assertFound("entries 12 to 12 were removed");
    Sealed swapped = sealed.copy(folder.resolve("swapped"));
    swapped.edit(
        "UPDATE seal SET seq = -1 WHERE seq = 12",
        "UPDATE seal SET seq = 12 WHERE seq = 13",
        "UPDATE seal SET seq = 13 WHERE seq = -1");
    swapped.assertFound("entry 12 does not follow", "entry 13 does not follow");
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
    sealed.assertFound("are gone: the end was cut off");
    Files.delete(sealed.checkpoints());
    SealExpected known = new SealExpected(List.of(SealExpected.Anchor.of(anchor)), "");
    List<String> faults = sealed.report(known).faults();
    assertTrue(faults.stream().anyMatch(each -> each.contains("before the anchor")), "" + faults);
  }

  @Test
  void aChainMadeAnewIsFoundByTheCheckpoints() throws Exception {
    sealed.edit("UPDATE reading SET value_nm = value_nm + 1 WHERE id = 5");
    rebuild(sealed);
    sealed.assertFound("the chain was made anew");
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
    byHand.assertFound("an older file put in place without a restore");

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
    sealed.assertFound("has another history than every checkpoint before it");
  }

  @Test
  void anotherKeyAndEditedLinesOfTheCheckpointsAreFound() throws Exception {
    String key = sealed.report(SealExpected.NOTHING).keyFingerprint();
    Sealed other = sealed.copy(folder.resolve("other"));
    Files.delete(other.directory().resolve(SealKey.FILE_NAME));
    other.goOn(1);
    other.assertFound("another key signs");
    Files.delete(other.checkpoints());
    other.goOn(1);
    SealReport report = other.report(new SealExpected(List.of(), key));
    assertTrue(report.faults().toString().contains("not by " + key), report::toString);

    List<String> lines = Files.readAllLines(sealed.checkpoints());
    List<String> edited = new ArrayList<>(lines);
    edited.set(0, lines.get(0).replace("NEW", "START"));
    Files.write(sealed.checkpoints(), edited);
    sealed.assertFound("checkpoint line 1 was altered");
    Files.write(sealed.checkpoints(), lines.subList(1, lines.size()));
    sealed.assertFound("lines before line 1 were altered or removed");
  }

  @Test
  void theKeyIsReadByItsOwnerOnly() throws Exception {
    Path key = sealed.directory().resolve(SealKey.FILE_NAME);
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(key)));
  }

  @Test
  void theKeyMayBeOutsideOfTheDataAndStaysTheSame() throws Exception {
    String before = sealed.report(SealExpected.NOTHING).keyFingerprint();
    Path elsewhere = Files.createDirectory(folder.resolve("elsewhere")).resolve("seal.pem");
    SqliteFiles files = new SqliteFiles(sealed.directory());
    files.sealKeyAt(elsewhere);
    files.sealKeyAt(elsewhere);
    assertTrue(Files.notExists(sealed.directory().resolve(SealKey.FILE_NAME)));
    assertEquals(
        "rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(elsewhere)));
    sealed.goOn(2);
    SealReport report = sealed.report(SealExpected.NOTHING);
    assertEquals(List.of(), report.faults());
    assertEquals(before, report.keyFingerprint());
    Files.move(elsewhere, folder.resolve("away.pem"));
    BadInput refused = assertThrows(BadInput.class, () -> sealed.goOn(1));
    assertTrue(String.valueOf(refused.getMessage()).contains("can't be read"), refused::getMessage);
  }

  @Test
  void anotherKeyOrOneInTheDataIsNoPlace() throws Exception {
    SqliteFiles files = new SqliteFiles(sealed.directory());
    Path inside = sealed.directory().resolve("keys/seal.pem");
    assertThrows(BadInput.class, () -> files.sealKeyAt(inside));
    Path other = folder.resolve("other.pem");
    SealKey.make(other);
    BadInput refused = assertThrows(BadInput.class, () -> files.sealKeyAt(other));
    assertTrue(String.valueOf(refused.getMessage()).contains("another key"), refused::getMessage);
    assertTrue(Files.exists(sealed.directory().resolve(SealKey.FILE_NAME)));
  }

  @Test
  void aPlaceThatCannotBeReadAsAKeyIsToldSo() throws Exception {
    SqliteFiles files = new SqliteFiles(sealed.directory());
    Path taken = Files.createDirectory(folder.resolve("taken"));
    BadInput refused = assertThrows(BadInput.class, () -> files.sealKeyAt(taken));
    assertTrue(String.valueOf(refused.getMessage()).contains("is a folder"), refused::getMessage);
  }
}
