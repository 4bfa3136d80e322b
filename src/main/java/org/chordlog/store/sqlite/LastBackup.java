package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Optional;
import org.chordlog.store.sql.Now;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * When the newest backup was made, in a file beside the database, since a backup only reads that.
 * Who may not write the directory leaves no note.
 */
final class LastBackup {
  static final String FILE_NAME = "last-backup.txt";
  private static final Logger LOG = LoggerFactory.getLogger(LastBackup.class);

  private LastBackup() {}

  static void note(Path directory) {
    try {
      Path file = directory.resolve(FILE_NAME);
      note(file, CheckedCopy.newPart(file));
    } catch (IOException e) {
      LOG.atDebug().setCause(e).log("the time of the backup is not noted");
    }
  }

  private static void note(Path file, Path part) throws IOException {
    try {
      OwnFiles.giveToOwnerOfFolder(part);
      Path written = Files.writeString(part, Now.micros() + "\n");
      Path unused = Files.move(written, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** UTC microseconds; empty where none was noted. */
  static Optional<Long> micros(Path directory) {
    Path file = directory.resolve(FILE_NAME);
    try {
      return Files.exists(file)
          ? Optional.of(Long.valueOf(Files.readString(file).strip()))
          : Optional.empty();
    } catch (IOException | NumberFormatException e) {
      LOG.atDebug().setCause(e).log("the time of the last backup can't be read");
      return Optional.empty();
    }
  }
}
