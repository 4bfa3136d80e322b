package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Records that were announced and are missing are noticed at the next start, and said. */
final class AnnouncedTest {
  @TempDir Path directory;

  private static void append(SqliteStore store, Reading like, int first, int last) {
    for (int i = first; i <= last; i++) {
      var unused =
          store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())).join();
    }
  }

  /** Database, journal and count as a kill would leave them. */
  private Path asKilled(Path from) throws Exception {
    Path to = Files.createDirectory(directory.resolve("killed"));
    for (String name :
        List.of(SqliteStore.FILE_NAME, SqliteStore.FILE_NAME + "-wal", Announced.FILE_NAME)) {
      Files.copy(from.resolve(name), to.resolve(name));
    }
    return to;
  }

  @Test
  void aWholeJournalLacksNothing() throws Exception {
    Path data = directory.resolve("data");
    try (SqliteStore store = SqliteStore.open(data)) {
      append(store, Kept.first(store), 1, 20);
      String epoch = store.epoch();
      try (SqliteStore killed = SqliteStore.open(asKilled(data))) {
        assertEquals(20, killed.readings().lastId());
        assertEquals(List.of(), killed.health().warnings());
        assertEquals(epoch, killed.epoch());
      }
    }
  }

  @Test
  void aCutJournalIsSaidUntilItsNoteIsMovedAway() throws Exception {
    Path data = directory.resolve("data");
    Path killed;
    String epoch;
    try (SqliteStore store = SqliteStore.open(data)) {
      append(store, Kept.first(store), 1, 20);
      killed = asKilled(data);
      epoch = store.epoch();
    }
    Path journal = killed.resolve(SqliteStore.FILE_NAME + "-wal");
    try (FileChannel channel = FileChannel.open(journal, StandardOpenOption.WRITE)) {
      channel.truncate(channel.size() / 2);
    }
    try (SqliteStore store = SqliteStore.open(killed)) {
      assertTrue(store.readings().lastId() < 20);
      String said = store.health().warnings().get(0);
      assertTrue(said.contains("announced records are missing"), said);
      assertTrue(said.contains("to 20"), said);
      assertNotEquals(epoch, store.epoch());
    }
    assertTrue(new SqliteFiles(killed).audit().get(0).contains("announced records are missing"));
    try (SqliteStore store = SqliteStore.open(killed)) {
      assertEquals(1, store.health().warnings().size(), "said again after the next start");
    }
    try (var notes = Files.newDirectoryStream(killed, "missing-records-*")) {
      Files.delete(notes.iterator().next());
    }
    try (SqliteStore store = SqliteStore.open(killed)) {
      assertEquals(List.of(), store.health().warnings());
    }
  }

  @Test
  void anOlderFileInItsPlaceAndADeletedOneAreSaid() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    Path older = directory.resolve("older");
    Reading like;
    try (SqliteStore store = SqliteStore.open(directory)) {
      like = Kept.first(store);
      append(store, like, 1, 5);
    }
    Files.copy(file, older);
    try (SqliteStore store = SqliteStore.open(directory)) {
      append(store, like, 6, 9);
    }
    Files.copy(older, file, StandardCopyOption.REPLACE_EXISTING);
    try (SqliteStore store = SqliteStore.open(directory)) {
      assertTrue(store.health().warnings().get(0).contains("readings 6 to 9"));
    }
    Files.delete(file);
    try (SqliteStore store = SqliteStore.open(directory)) {
      assertTrue(store.health().warnings().get(1).contains("readings 1 to 5"));
    }
  }

  @Test
  void aRestoreOnPurposeLacksNothingAndBeginsAnEpoch() throws Exception {
    Path data = directory.resolve("data");
    Path backup = directory.resolve("copy.db");
    String before;
    try (SqliteStore store = SqliteStore.open(data)) {
      Reading like = Kept.first(store);
      append(store, like, 1, 5);
      new SqliteFiles(data).backup(backup);
      append(store, like, 6, 9);
      before = store.epoch();
    }
    assertTrue(new SqliteFiles(data).restore(backup).verified());
    try (SqliteStore store = SqliteStore.open(data)) {
      assertEquals(5, store.readings().lastId());
      assertEquals(List.of(), store.health().warnings());
      assertNotEquals(before, store.epoch());
    }
  }

  @Test
  void twoServicesOnOneFileAreRefusedAlsoWithoutTheLockFile() throws Exception {
    Path backup = directory.resolve("copy.db");
    Path data = directory.resolve("data");
    try (SqliteStore store = SqliteStore.open(data)) {
      append(store, Kept.first(store), 1, 3);
      new SqliteFiles(data).backup(backup);
      Files.delete(data.resolve("chordlog.lock"));
      BadInput second = assertThrows(BadInput.class, () -> SqliteStore.open(data));
      assertTrue(second.said().toString().contains("lock file is gone"), second::toString);
      assertThrows(BadInput.class, () -> new SqliteFiles(data).restore(backup));
      append(store, store.readings().find(1).orElseThrow(), 4, 4);
      Path other = directory.resolve("other");
      var unused = new SqliteFiles(other).restore(backup);
      try (SqliteStore copy = SqliteStore.open(other)) {
        assertEquals(3, copy.readings().lastId(), "a copy is claimed by nobody");
      }
    }
    try (SqliteStore again = SqliteStore.open(data)) {
      assertEquals(4, again.readings().lastId());
    }
  }
}
