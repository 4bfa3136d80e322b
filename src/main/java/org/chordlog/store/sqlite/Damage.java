package org.chordlog.store.sqlite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.store.sql.Sql;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Finds a damaged database before it is used and moves it aside; nothing is ever deleted. */
final class Damage {
  /** Larger files are checked in the background, after the store has opened. */
  static final long CHECKED_FIRST_BYTES = 256L << 20;

  private static final String FOLDER = "damaged-";
  private static final Logger LOG = LoggerFactory.getLogger(Damage.class);

  private Damage() {}

  /** Moves a damaged file and its WAL into a folder of their own. */
  static void setAside(Path file) throws SQLException {
    if (!Files.exists(file) || file.toFile().length() > CHECKED_FIRST_BYTES) {
      return;
    }
    String found = find(file);
    if (!found.isEmpty()) {
      move(file, found);
    }
  }

  /** What is wrong with the file; empty when nothing is. */
  static String find(Path file) throws SQLException {
    try (Connection connection = Connections.reader(file)) {
      return find(connection);
    } catch (SQLException e) {
      return damagedOrThrow(e);
    }
  }

  static String find(Connection connection) throws SQLException {
    String verdict =
        Sql.first(connection, "PRAGMA quick_check(1)", row -> row.getString(1)).orElse("no answer");
    return verdict.equals("ok") ? "" : verdict;
  }

  private static String damagedOrThrow(SQLException e) throws SQLException {
    if (Failures.damaged(e)) {
      return String.valueOf(e.getMessage());
    }
    throw e;
  }

  private static void move(Path file, String found) {
    Path folder;
    try {
      folder = SyncedFiles.setAside(file, FOLDER);
      Announced.forget(file);
    } catch (IOException e) {
      throw new UncheckedIOException("the damaged database can't be moved: " + e, e);
    }
    LOG.atError()
        .addKeyValue("folder", folder)
        .addKeyValue("found", found)
        .log("the database was damaged and was moved aside; a new one was created");
  }

  /** One sentence for each folder of a damaged database that is still beside the file. */
  static List<String> warnings(Path file) {
    try (Stream<Path> entries = Files.list(file.resolveSibling("."))) {
      return entries
          .filter(entry -> String.valueOf(entry.getFileName()).startsWith(FOLDER))
          .sorted()
          .map(Damage::warning)
          .toList();
    } catch (IOException e) {
      return List.of("the data directory can't be listed: " + e);
    }
  }

  private static String warning(Path folder) {
    return "a damaged database was moved to "
        + folder.getFileName()
        + " and a new one created: stop, restore the newest backup with 'restore', and move the"
        + " folder away when nothing in it is needed";
  }
}
