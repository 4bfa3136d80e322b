package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import org.chordlog.Await;
import org.chordlog.harness.Children;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * A migration of a file of many readings is killed (SIGKILL) once its journal has grown to a random
 * part of what it needs: the file is still of the old version, whole and usable by it, and the next
 * start of the newer version finishes the work.
 */
@Tag("slow")
final class MigrationKillTest {
  private static final int READINGS = 8_000;
  private static final int KILLS = 5;

  /** A busy machine lets a kill come too late; that migration counts as one that was not killed. */
  private static final int TRIES = 50;

  @TempDir(factory = TempDirFactory.Standard.class)
  Path directory;

  private final Random random = new Random(20261125);
  private Path data;
  private Path old;
  private Path file;
  private Path journal;
  private Reading like;
  private long wholeJournal;

  @BeforeEach
  void prepare() throws Exception {
    data = Files.createDirectory(directory.resolve("data"));
    file = data.resolve(SqliteStore.FILE_NAME);
    journal = data.resolve(SqliteStore.FILE_NAME + "-wal");
    old = directory.resolve("old.db");
    fill();
    Files.copy(file, old);
    wholeJournal = journalOfAWholeMigration();
  }

  @Test
  void aKilledMigrationLeavesAFileForTheOldAndTheNewVersion() throws Exception {
    int interrupted = 0;
    int tries = 0;
    while (interrupted < KILLS && tries < TRIES) {
      restoreOld();
      kill(1 + random.nextLong(wholeJournal * 9 / 10));
      tries++;
      interrupted += version() == Schema.VERSION ? 1 : 0;
      check();
    }
    System.out.println(interrupted + " of " + tries + " kills came in the midst of the migration");
    assertEquals(KILLS, interrupted, "kills in the midst of " + tries + " migrations");
  }

  private void check() throws Exception {
    if (version() == Schema.VERSION) {
      assertEquals(List.of(), new SqliteFiles(data).audit());
      try (SqliteStore store = SqliteStore.open(data)) {
        assertEquals(READINGS, store.readings().all(0, READINGS + 1).size());
        Reading next = Some.reading("A", READINGS + 1, like.jobId(), like.setUpId());
        assertEquals(READINGS + 1, store.readings().append(next).join().id());
      }
      finish();
    }
    assertEquals(KilledMigration.VERSION, version());
    assertTrue(rewritten() >= READINGS);
    BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(data));
    assertTrue(e.toString().contains("newer Chordlog"), e::toString);
  }

  private void fill() {
    try (SqliteStore store = SqliteStore.open(data)) {
      like = Kept.first(store);
      List<CompletableFuture<Reading>> kept = new ArrayList<>();
      for (long sequence = 1; sequence <= READINGS; sequence++) {
        kept.add(
            store.readings().append(Some.reading("A", sequence, like.jobId(), like.setUpId())));
      }
      kept.forEach(CompletableFuture::join);
    }
  }

  /** A reader keeps the journal from being emptied at the end. */
  private long journalOfAWholeMigration() throws Exception {
    try (Connection reader = Connections.reader(file)) {
      long unused = Sql.number(reader, "SELECT count(*) FROM reading");
      finish();
      return Files.size(journal);
    }
  }

  private void kill(long journalBytes) throws Exception {
    Process process = migration();
    Await.closely(
        () -> !process.isAlive() || (Files.exists(journal) && Files.size(journal) >= journalBytes));
    process.toHandle().destroyForcibly();
    Await.end(process);
  }

  /** The whole migration, which nobody kills: in this process. */
  private void finish() throws SQLException {
    KilledMigration.main(new String[] {file.toString()});
  }

  private Process migration() throws IOException {
    return Children.start(Children.program(KilledMigration.class, "128m", file).inheritIO());
  }

  private void restoreOld() throws IOException {
    Files.deleteIfExists(journal);
    Files.deleteIfExists(file.resolveSibling(SqliteStore.FILE_NAME + "-shm"));
    Files.copy(old, file, StandardCopyOption.REPLACE_EXISTING);
    Announced.forget(file);
    Files.deleteIfExists(file.resolveSibling(SealFile.FILE_NAME));
  }

  private int version() throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      return Schema.version(connection);
    }
  }

  private long rewritten() throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      return Sql.number(connection, "SELECT count(*) FROM reading WHERE more LIKE 'of %'");
    }
  }
}
