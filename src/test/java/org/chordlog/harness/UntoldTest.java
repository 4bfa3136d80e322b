package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.chordlog.store.sqlite.SqliteStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A reading that was committed and not announced may be gone; nothing else may. */
final class UntoldTest {
  @TempDir Path directory;

  /** What a kill after five readings left, of which so many had been announced. */
  private Path killed(String name, long announced) throws Exception {
    Path data = directory.resolve("data of " + name);
    Path killed = Files.createDirectory(directory.resolve(name));
    try (Store store = Stores.open(data)) {
      Reading like = Kept.first(store);
      for (int i = 1; i <= 5; i++) {
        var unused =
            store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())).join();
      }
      for (String each : List.of(SqliteStore.FILE_NAME, SqliteStore.FILE_NAME + "-wal")) {
        Files.copy(data.resolve(each), killed.resolve(each));
      }
      String[] words = Files.readString(data.resolve("announced")).split(" ", -1);
      words[4] = "%019d".formatted(announced);
      Files.writeString(killed.resolve("announced"), String.join(" ", words));
    }
    return killed;
  }

  private static void edit(Path data, String sql) throws Exception {
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + data.resolve(SqliteStore.FILE_NAME));
        Statement statement = connection.createStatement()) {
      for (String each : sql.split(";", -1)) {
        statement.executeUpdate(each);
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "4, DELETE FROM reading WHERE id = 5, true",
    "5, DELETE FROM reading WHERE id = 5, false",
    "3, DELETE FROM reading WHERE id >= 4, true",
    "3, DELETE FROM reading WHERE id = 4, false",
    "4, DELETE FROM reading WHERE id = 4, false",
    "4, DELETE FROM reading WHERE id = 5; UPDATE reading SET piece = 99 WHERE id = 2, false",
    "3, DELETE FROM reading WHERE id = 5; UPDATE reading SET piece = 99 WHERE id = 4, false",
    "4, UPDATE reading SET piece = piece, false",
  })
  void onlyWhatNobodyWasToldOfMayBeMissing(long announced, String sql, boolean untold)
      throws Exception {
    Path sound = killed("sound", announced);
    Path cut = Files.createDirectory(directory.resolve("cut"));
    for (String each : List.of(SqliteStore.FILE_NAME, SqliteStore.FILE_NAME + "-wal")) {
      Files.copy(sound.resolve(each), cut.resolve(each));
    }
    edit(cut, sql);
    assertEquals(untold, new Untold(sound).isAllThatIsMissing(cut));
  }

  @Test
  void theFileOfWhatWasAnnouncedIsAsThisReadsIt() throws Exception {
    Path data = directory.resolve("data");
    try (Store store = Stores.open(data)) {
      assertEquals(1, store.readings().append(Kept.first(store)).join().id());
      String[] words = Files.readString(data.resolve("announced")).strip().split(" ", -1);
      assertEquals(8, words.length);
      assertEquals(1, Long.parseLong(words[4]));
    }
  }
}
