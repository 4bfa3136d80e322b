package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Replaces a database that nobody uses by a checked backup. */
final class Restoring {
  private static final Logger LOG = LoggerFactory.getLogger(Restoring.class);

  private Restoring() {}

  static StoreFiles.Restored restore(Path directory, Path source) {
    if (!Files.isRegularFile(source)) {
      String problem = Files.exists(source) ? "is not a file" : "does not exist";
      throw new BadInput("FILE", source, problem, "a backup made by 'backup'");
    }
    verifySource(source);
    DataLock lock = DataLock.take(directory);
    try {
      Path file = directory.resolve(SqliteStore.FILE_NAME);
      refuseInUse(file);
      SealKeyPlace.require(file); // it signs that the data were restored
      return put(source, file, CheckedCopy.newPart(file));
    } catch (IOException e) {
      throw new BadInput("data", directory, FileTrouble.writing(e), "a folder that can be written");
    } finally {
      lock.close();
    }
  }

  /** A file that is no backup is refused as such, also while the data is in use. */
  private static void verifySource(Path source) {
    try {
      var unused = BackupSeal.verify(source);
    } catch (IOException e) {
      throw new BadInput("FILE", source, FileTrouble.reading(source, e), "a readable backup");
    }
  }

  /** Also where somebody deleted the lock file under a service that runs. */
  private static void refuseInUse(Path file) {
    if (!Files.exists(file)) {
      return;
    }
    try (Connection connection = Connections.reader(file)) {
      ServiceClaim.refuseOther(file, connection);
    } catch (SQLException e) {
      if (Failures.locked(e)) {
        throw new BadInput(
            "data", file, "can't be replaced: " + Failures.sentence(e), "a file that nobody uses");
      }
      LOG.atDebug().setCause(e).log("what is replaced can't be read");
    }
  }

  /** What is checked is the copy that is then used. */
  private static StoreFiles.Restored put(Path source, Path file, Path part) throws IOException {
    try {
      Files.copy(source, part, StandardCopyOption.REPLACE_EXISTING);
      boolean verified = BackupSeal.verify(part);
      if (verified) {
        BackupSeal.remove(part);
      }
      requireSound(part, source);
      Incarnation.raise(part, file);
      SyncedFiles.sync(part);
      @Nullable Path aside = Files.exists(file) ? SyncedFiles.setAside(file, "replaced-") : null;
      SyncedFiles.rename(part, file);
      Announced.forget(file);
      announceRestore(file);
      return new StoreFiles.Restored(Optional.ofNullable(aside), verified);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** In the file of checkpoints, so that an audit tells it from a file put in place by hand. */
  private static void announceRestore(Path file) throws IOException {
    try (Connection connection = Connections.immutable(file)) {
      boolean sealed = Schema.version(connection) >= SealEntry.SINCE_VERSION;
      SealEntry newest =
          sealed ? SealEntry.newest(connection) : SealEntry.none(SealEntry.uuid(connection));
      new SealFile(file)
          .add(
              SealCheckpoint.Kind.RESTORE,
              SealEntry.uuid(connection),
              new SealCheckpoint.Tip(newest.seq(), newest.hashText()));
    } catch (SQLException e) {
      throw new IOException("what was restored can't be read", e);
    }
  }

  private static void requireSound(Path copy, Path source) {
    try (Connection connection = Connections.immutable(copy)) {
      int version = Schema.version(connection);
      if (Sql.number(connection, "PRAGMA application_id") != Schema.APPLICATION_ID
          || version == 0) {
        throw new BadInput(
            "FILE", source, "is empty or of another program", "a backup made by 'backup'");
      }
      Schema.requireOurs(connection, source, version);
      String found = Damage.find(connection);
      if (!found.isEmpty()) {
        throw new BadInput("FILE", source, "is damaged: " + found, "an undamaged backup");
      }
    } catch (SQLException e) {
      throw new BadInput("FILE", source, "can't be read: " + e.getMessage(), "an undamaged backup");
    }
  }
}
