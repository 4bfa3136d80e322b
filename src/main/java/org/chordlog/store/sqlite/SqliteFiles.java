package org.chordlog.store.sqlite;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.store.StoreFiles;

/** A data directory: the database file, its WAL, and what was set aside. */
public record SqliteFiles(Path directory) implements StoreFiles {
  @Override
  public boolean exist() {
    return Files.exists(directory.resolve(SqliteStore.FILE_NAME));
  }

  @Override
  public void backup(Path target) {
    try (OpenedForReading opened = OpenedForReading.open(directory)) {
      CheckedCopy.write(opened.file(), target);
    }
  }

  @Override
  public Restored restore(Path backup) {
    return Restoring.restore(directory, backup);
  }

  @Override
  public List<String> audit() {
    try (OpenedForReading opened = OpenedForReading.open(directory)) {
      List<String> faults = new ArrayList<>(opened.database().read(StoreAudit::of));
      faults.addAll(Announced.warnings(opened.file()));
      String gone = opened.database().read(c -> Announced.missing(opened.file(), c));
      if (!gone.isEmpty()) {
        faults.add("announced records are missing from the database: " + gone);
      }
      return faults;
    }
  }
}
