package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.chordlog.store.Feed;
import org.chordlog.store.SealTip;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.SqlStore;

/** A store in one SQLite file of a data directory that no other process may write; any thread. */
public final class SqliteStore extends SqlStore {
  public static final String FILE_NAME = "chordlog.db";

  private final Opened opened;
  private final Database database;
  private final AtomicBoolean closed = new AtomicBoolean();

  private SqliteStore(Opened opened) {
    super(opened.database());
    this.opened = opened;
    this.database = opened.database();
  }

  /** As {@link #open(Path, StoreSettings)}, with the usual settings. */
  public static SqliteStore open(Path directory) {
    return open(directory, StoreSettings.USUAL);
  }

  /**
   * Opens for reading and writing, makes directory and file where there are none, and does the
   * steps of the schema that the file lacks. Throws {@link org.chordlog.measure.BadInput} where
   * another process writes to it, or where it is damaged or newer than this program.
   */
  public static SqliteStore open(Path directory, StoreSettings settings) {
    return new SqliteStore(OpenedForWriting.open(directory, settings));
  }

  /**
   * Beside a service that writes, or alone; refuses every change. Throws {@link
   * org.chordlog.measure.BadInput} where there is no file, or one that is damaged or of another
   * version.
   */
  public static SqliteStore openForReading(Path directory) {
    return new SqliteStore(OpenedForReading.open(directory));
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
  public String identity() {
    return database.read(
        connection ->
            Sql.first(connection, "SELECT uuid FROM identity", row -> row.getString(1))
                .orElseThrow());
  }

  @Override
  public String epoch() {
    return opened.epoch();
  }

  @Override
  public SealTip seal() {
    return database.read(c -> SealEntry.newest(c).tip(SealEntry.uuid(c)));
  }

  @Override
  public Optional<Feed> feed() {
    return Optional.of(new SqliteFeed(database));
  }

  @Override
  public StoreHealth health() {
    return opened.health();
  }

  @Override
  public void close() {
    if (!closed.getAndSet(true)) {
      opened.close();
    }
  }
}
