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

  public static SqliteStore open(Path directory) {
    return open(directory, StoreSettings.USUAL);
  }

  public static SqliteStore open(Path directory, StoreSettings settings) {
    return new SqliteStore(OpenedForWriting.open(directory, settings));
  }

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
