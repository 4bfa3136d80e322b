package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/**
 * Which process writes to a database, noted in the database itself, so that it can't be deleted as
 * the lock file can. It names the file too: a copy, as a backup is, is claimed by nobody. A process
 * of another container is not seen; the lock file is for that.
 */
final class ServiceClaim {
  static final String OWNER = "service-claim";

  private ServiceClaim() {}

  /** {@link BadInput} where another process that still runs has the file. */
  static void refuseOther(Path file, Connection connection) throws SQLException {
    boolean kept =
        Sql.number(
                connection,
                "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name = 'checkpoint'")
            > 0;
    Optional<String> claim =
        kept
            ? Sql.first(
                connection,
                "SELECT state FROM checkpoint WHERE owner = ?",
                row -> new String(row.getBytes(1), StandardCharsets.UTF_8),
                OWNER)
            : Optional.empty();
    if (claim.isPresent()) {
      refuse(file, claim.get());
    }
  }

  private static void refuse(Path file, String claim) {
    String[] words = claim.split(" ", 3);
    long process = Long.parseLong(words[0]);
    boolean runs = ProcessHandle.of(process).filter(p -> words[1].equals(started(p))).isPresent();
    if (runs && words[2].equals(key(file))) {
      throw new BadInput(
          "data",
          file,
          "is in use by process " + process + ", though its lock file is gone",
          "a directory of its own, or stop that process first");
    }
  }

  static void put(Path file, Connection connection) throws SQLException {
    ProcessHandle self = ProcessHandle.current();
    String claim = self.pid() + " " + started(self) + " " + key(file);
    int unused =
        Sql.update(
            connection,
            "INSERT OR REPLACE INTO checkpoint (owner, level, reading_id, state)"
                + " VALUES (?, 0, 0, ?)",
            OWNER,
            claim.getBytes(StandardCharsets.UTF_8));
  }

  static void drop(Connection connection) throws SQLException {
    int unused = Sql.update(connection, "DELETE FROM checkpoint WHERE owner = ?", OWNER);
  }

  private static String started(ProcessHandle process) {
    return process.info().startInstant().map(Instant::toString).orElse("-");
  }

  /** Device and inode where the system has them. */
  private static String key(Path file) {
    try {
      @Nullable Object key = Files.readAttributes(file, BasicFileAttributes.class).fileKey();
      return key == null ? "-" : key.toString();
    } catch (IOException e) {
      return "-";
    }
  }
}
