package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import java.util.Optional;
import org.chordlog.store.Changes;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Gauges;
import org.chordlog.store.Incidents;
import org.chordlog.store.Jobs;
import org.chordlog.store.Readings;
import org.chordlog.store.Store;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.Traces;

/** Everything in one SQLite file of a data directory that this process alone may write. */
public final class SqliteStore implements Store {
  public static final String FILE_NAME = "chordlog.db";

  private final Opened opened;
  private final Database database;

  private SqliteStore(Opened opened) {
    this.opened = opened;
    this.database = opened.database();
  }

  /**
   * Opens or creates the store. Throws {@link org.chordlog.measure.BadInput} when the directory
   * can't be written, is in use by another instance, or was written by a newer version.
   */
  public static SqliteStore open(Path directory) {
    return open(directory, StoreSettings.USUAL);
  }

  public static SqliteStore open(Path directory, StoreSettings settings) {
    return new SqliteStore(OpenedForWriting.open(directory, settings));
  }

  /**
   * Opens a store to look at, also while a service writes to it; whatever would change it throws
   * {@link org.chordlog.store.StoreException}.
   */
  public static SqliteStore openForReading(Path directory) {
    return new SqliteStore(OpenedForReading.open(directory));
  }

  /**
   * Puts a backup in place of what the directory holds; the folder to which that went, if anything
   * was there. Throws {@link org.chordlog.measure.BadInput} when the backup is not sound or not
   * ours, or the directory is in use.
   */
  public static Optional<Path> restore(Path directory, Path source) {
    return Restoring.restore(directory, source);
  }

  /** Reads everything that a directory holds; a sentence for each fault. */
  public static List<String> audit(Path directory) {
    try (SqliteStore store = openForReading(directory)) {
      return store.database.read(StoreAudit::of);
    }
  }

  Database database() {
    return database;
  }

  Connection writerConnection() {
    if (opened instanceof OpenedForWriting writing) {
      return writing.connection();
    }
    throw new IllegalStateException("open for reading only");
  }

  @Override
  public Readings readings() {
    return new SqliteReadings(database, new SetUps(database), new Exclusions(database));
  }

  @Override
  public Jobs jobs() {
    return new SqliteJobs(database);
  }

  @Override
  public Gauges gauges() {
    return new SqliteGauges(database);
  }

  @Override
  public Traces traces() {
    return new SqliteTraces(database);
  }

  @Override
  public Changes changes() {
    return new SqliteChanges(database);
  }

  @Override
  public Incidents incidents() {
    return new SqliteIncidents(database);
  }

  @Override
  public Checkpoints checkpoints() {
    return new SqliteCheckpoints(database);
  }

  @Override
  public StoreHealth health() {
    return opened.health();
  }

  @Override
  public void backup(Path target) {
    Backup.write(opened.file(), target);
  }

  /** Keeps what is queued, empties the journal, and frees the directory. */
  @Override
  public void close() {
    opened.close();
  }
}
