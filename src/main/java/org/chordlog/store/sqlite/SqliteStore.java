package org.chordlog.store.sqlite;

import java.nio.file.Path;
import java.sql.Connection;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.chordlog.store.Accounts;
import org.chordlog.store.Alerts;
import org.chordlog.store.Changes;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Feed;
import org.chordlog.store.Gauges;
import org.chordlog.store.Incidents;
import org.chordlog.store.Jobs;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Machines;
import org.chordlog.store.Outbox;
import org.chordlog.store.Readings;
import org.chordlog.store.SealTip;
import org.chordlog.store.SignalAnswers;
import org.chordlog.store.Store;
import org.chordlog.store.StoreHealth;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.Studies;
import org.chordlog.store.Traces;
import org.chordlog.store.UnreadableRecord;

/** A store in one SQLite file of a data directory that no other process may write; any thread. */
public final class SqliteStore implements Store {
  public static final String FILE_NAME = "chordlog.db";

  private final Opened opened;
  private final Database database;
  private final AtomicBoolean closed = new AtomicBoolean();

  private SqliteStore(Opened opened) {
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
  public Readings readings() {
    return new SqliteReadings(database, new SetUps(database), new ExclusionRows(database));
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
  public SignalAnswers signalAnswers() {
    return new SqliteSignalAnswers(database);
  }

  @Override
  public Machines machines() {
    return new SqliteMachines(database);
  }

  @Override
  public Logbooks logbooks() {
    return new SqliteLogbooks(database);
  }

  @Override
  public Studies studies() {
    return new SqliteStudies(database);
  }

  @Override
  public Accounts accounts() {
    return new SqliteAccounts(database);
  }

  @Override
  public Alerts alerts() {
    return new SqliteAlerts(database);
  }

  @Override
  public Outbox outbox() {
    return new SqliteOutbox(database);
  }

  @Override
  public Optional<Feed> feed() {
    return Optional.of(new SqliteFeed(database));
  }

  @Override
  public List<UnreadableRecord> unreadable() {
    return database.unreadable().found();
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
