package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.chordlog.store.SealExpected;
import org.chordlog.store.SealReport;
import org.chordlog.store.StoreFiles;
import org.chordlog.store.sql.Sql;

/** A data directory: the database file, its WAL, and what was set aside. */
public record SqliteFiles(Path directory) implements StoreFiles {
  @Override
  public boolean exist() {
    return Files.exists(directory.resolve(SqliteStore.FILE_NAME));
  }

  @Override
  public void backup(Path target) {
    try (OpenedForReading opened = OpenedForReading.openToCopy(directory)) {
      CheckedCopy.write(opened.file(), target);
    }
    LastBackup.note(directory);
  }

  @Override
  public Optional<Long> lastBackupMicros() {
    return LastBackup.micros(directory);
  }

  @Override
  public void sealKeyAt(Path key) {
    SealKeyPlace.move(directory, key);
  }

  @Override
  public Restored restore(Path backup) {
    return Restoring.restore(directory, backup);
  }

  @Override
  public SealReport auditSeal(SealExpected expected) {
    try (OpenedForReading opened = OpenedForReading.open(directory)) {
      List<String> lines = new SealFile(opened.file()).lines(); // first: the service may go on
      return opened.database().read(connection -> auditSeal(connection, lines, expected));
    } catch (IOException e) {
      throw new BadInput(
          "seal", directory, FileTrouble.reading(directory, e), "a readable directory");
    }
  }

  private static SealReport auditSeal(
      Connection connection, List<String> lines, SealExpected expected) throws SQLException {
    Sql.run(connection, "BEGIN");
    try {
      SealFaults faults = new SealFaults();
      SealLines outside = new SealLines(connection, faults);
      SealAudit.run(connection, faults);
      outside.check(lines, expected.keyFingerprint());
      for (SealExpected.Anchor each : expected.anchors()) {
        outside.check(each);
      }
      return new SealReport(
          outside.newest().tip(SealEntry.uuid(connection)),
          outside.keyFingerprint(),
          faults.all(),
          outside.notes());
    } finally {
      Sql.run(connection, "COMMIT");
    }
  }

  @Override
  public List<String> audit() {
    try (OpenedForReading opened = OpenedForReading.open(directory)) {
      List<String> faults = new ArrayList<>(opened.database().read(FileAudit::of));
      faults.addAll(Announced.warnings(opened.file()));
      String gone = opened.database().read(c -> Announced.missing(opened.file(), c));
      if (!gone.isEmpty()) {
        faults.add("announced records are missing from the database: " + gone);
      }
      faults.addAll(auditSeal(SealExpected.NOTHING).faults());
      return faults;
    }
  }
}
