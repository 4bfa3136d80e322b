package org.chordlog.harness;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.SortedMap;
import java.util.TreeMap;
import org.chordlog.store.sqlite.SqliteStore;

/**
 * What was committed when the kill came, but not yet announced: nobody had been told of it, so that
 * its loss is none. The file {@code announced} of the killed service says how far that went.
 */
final class Untold {
  /** As the file has them, from this word on. */
  private static final String[] TABLES = {"reading", "change", "job_event", "exclusion"};

  private static final int FIRST_WORD = 4;
  private final Path sound;
  private final String[] words;

  /** Of the files of a killed service, in which nothing was started since. */
  Untold(Path killed) throws IOException {
    sound = killed;
    words = Files.readString(killed.resolve("announced")).strip().split(" ", -1);
  }

  /**
   * Whether the newest rows are missing, and nothing but that: whatever was announced is as it was,
   * and so is each reading up to the newest that is there.
   */
  boolean isAllThatIsMissing(Path from) throws SQLException {
    boolean missing = false;
    for (int i = 0; i < TABLES.length; i++) {
      SortedMap<Long, String> before = rows(sound, TABLES[i]);
      SortedMap<Long, String> now = rows(from, TABLES[i]);
      long untold = Long.parseLong(words[FIRST_WORD + i]) + 1;
      boolean same = before.headMap(untold).equals(now.headMap(untold));
      if (!same || (i == 0 && !isBeginning(now, before))) {
        return false;
      }
      missing |= !now.keySet().containsAll(before.keySet());
    }
    return missing;
  }

  private static boolean isBeginning(SortedMap<Long, String> now, SortedMap<Long, String> before) {
    return now.isEmpty() || before.headMap(now.lastKey() + 1).equals(now);
  }

  private static SortedMap<Long, String> rows(Path data, String table) throws SQLException {
    SortedMap<Long, String> rows = new TreeMap<>();
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + data.resolve(SqliteStore.FILE_NAME));
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT rowid AS row, * FROM " + table)) {
      while (row.next()) {
        rows.put(row.getLong("row"), text(row));
      }
    }
    return rows;
  }

  private static String text(ResultSet row) throws SQLException {
    StringBuilder text = new StringBuilder();
    for (int column = 1; column <= row.getMetaData().getColumnCount(); column++) {
      text.append(row.getString(column)).append('|');
    }
    return text.toString();
  }
}
