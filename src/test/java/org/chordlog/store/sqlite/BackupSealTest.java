package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Backups: what was changed, cut or was never one is not restored. */
final class BackupSealTest {
  private static final int FLIPS = 200;
  @TempDir Path directory;
  private Path data;
  private Path backup;

  @BeforeEach
  void backup() {
    data = directory.resolve("data");
    backup = directory.resolve("copy.db");
    try (SqliteStore store = SqliteStore.open(data, Some.QUICK)) {
      Reading like = Kept.first(store);
      for (int i = 1; i <= 50; i++) {
        var unused =
            store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())).join();
      }
    }
    new SqliteFiles(data).backup(backup);
  }

  private SqliteFiles elsewhere() {
    return new SqliteFiles(directory.resolve("other"));
  }

  /** Nothing of the refused file is there afterwards. */
  private void isRefused(Path file) {
    BadInput refused = assertThrows(BadInput.class, () -> elsewhere().restore(file));
    assertEquals("FILE", refused.faults().get(0).field());
    assertFalse(elsewhere().exist());
  }

  @Test
  void everyFlippedBitIsFound() throws Exception {
    byte[] sound = Files.readAllBytes(backup);
    Random random = new Random(17);
    for (int i = 0; i < FLIPS; i++) {
      byte[] flipped = sound.clone();
      int at = random.nextInt(flipped.length);
      flipped[at] ^= (byte) (1 << random.nextInt(Byte.SIZE));
      isRefused(Files.write(directory.resolve("flipped.db"), flipped));
    }
  }

  @Test
  void anEmptyACutAndAnEditedFileAreRefused() throws Exception {
    isRefused(Files.createFile(directory.resolve("empty.db")));
    byte[] sound = Files.readAllBytes(backup);
    isRefused(Files.write(directory.resolve("cut.db"), Arrays.copyOf(sound, sound.length / 2)));
    isRefused(
        Files.write(
            directory.resolve("end.db"),
            Arrays.copyOf(sound, sound.length - BackupSeal.BYTES / 2)));
    Path edited = Files.write(directory.resolve("edited.db"), sound);
    try (Connection connection = Connections.writer(edited)) {
      Sql.run(connection, "UPDATE reading SET piece = 99 WHERE id = 7");
      Sql.run(connection, "PRAGMA journal_mode = DELETE");
    }
    isRefused(edited);
  }

  @Test
  void anotherProgramsDatabaseIsRefused() throws Exception {
    Path foreign = directory.resolve("foreign.db");
    try (Connection connection = Connections.writer(foreign)) {
      Sql.run(connection, "CREATE TABLE t (a)");
    }
    isRefused(foreign);
  }

  /** As backups were made before they had a checksum. */
  @Test
  void aFileWithoutAChecksumIsRestoredAndSaidToBeUnverified() throws Exception {
    BackupSeal.remove(backup);
    assertFalse(elsewhere().restore(backup).verified());
    assertEquals(List.of(), elsewhere().audit());
  }

  @Test
  void aBackupWithItsChecksumIsReadByOtherPrograms() throws Exception {
    try (Connection connection = Connections.immutable(backup)) {
      assertEquals(50, Sql.number(connection, "SELECT count(*) FROM reading"));
      assertEquals("", Damage.find(connection));
    }
  }

  @Test
  void theUnfinishedFileOfAnotherIsLeftAloneAndOnlyItsOwnerReadsABackup() throws Exception {
    Path target = directory.resolve("second.db");
    Path another = Files.writeString(directory.resolve("second.db.part"), "precious");
    new SqliteFiles(data).backup(target);
    assertEquals("precious", Files.readString(another));
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(target)));
  }

  @Test
  void aBackupThatFailsLeavesNothingBehind() throws Exception {
    Path file = data.resolve(SqliteStore.FILE_NAME);
    byte[] bytes = Files.readAllBytes(file);
    new Random(3).nextBytes(bytes);
    System.arraycopy(Files.readAllBytes(file), 0, bytes, 0, 8_192);
    Files.write(file, bytes);
    Path target = directory.resolve("failed.db");
    assertThrows(StoreException.class, () -> CheckedCopy.write(file, target));
    try (var left = Files.list(directory)) {
      assertTrue(left.noneMatch(each -> each.getFileName().toString().startsWith("failed.db")));
    }
  }
}
