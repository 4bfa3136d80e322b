package org.chordlog.store.sql;

import java.util.List;
import org.chordlog.store.Accounts;
import org.chordlog.store.Alerts;
import org.chordlog.store.AnsweredRequests;
import org.chordlog.store.Changes;
import org.chordlog.store.Checkpoints;
import org.chordlog.store.Gauges;
import org.chordlog.store.Incidents;
import org.chordlog.store.Jobs;
import org.chordlog.store.Logbooks;
import org.chordlog.store.Machines;
import org.chordlog.store.Outbox;
import org.chordlog.store.Readings;
import org.chordlog.store.SignalAnswers;
import org.chordlog.store.Store;
import org.chordlog.store.Studies;
import org.chordlog.store.Traces;
import org.chordlog.store.UnreadableRecord;

/** A store whose records are rows of a database; any thread. */
public abstract class SqlStore implements Store {
  private final Database database;

  protected SqlStore(Database database) {
    this.database = database;
  }

  @Override
  public Readings readings() {
    return new SqlReadings(database, new SetUps(database), new ExclusionRows(database));
  }

  @Override
  public Jobs jobs() {
    return new SqlJobs(database);
  }

  @Override
  public Gauges gauges() {
    return new SqlGauges(database);
  }

  @Override
  public Traces traces() {
    return new SqlTraces(database);
  }

  @Override
  public Changes changes() {
    return new SqlChanges(database);
  }

  @Override
  public Incidents incidents() {
    return new SqlIncidents(database);
  }

  @Override
  public Checkpoints checkpoints() {
    return checkpoints(database);
  }

  /** Written to another way than the rest. */
  protected static Checkpoints checkpoints(Database database) {
    return new SqlCheckpoints(database);
  }

  @Override
  public SignalAnswers signalAnswers() {
    return new SqlSignalAnswers(database);
  }

  @Override
  public Machines machines() {
    return new SqlMachines(database);
  }

  @Override
  public Logbooks logbooks() {
    return new SqlLogbooks(database);
  }

  @Override
  public Studies studies() {
    return new SqlStudies(database);
  }

  @Override
  public Accounts accounts() {
    return new SqlAccounts(database);
  }

  @Override
  public Alerts alerts() {
    return new SqlAlerts(database);
  }

  @Override
  public AnsweredRequests answeredRequests() {
    return new SqlAnsweredRequests(database);
  }

  @Override
  public Outbox outbox() {
    return new SqlOutbox(database);
  }

  @Override
  public List<UnreadableRecord> unreadable() {
    return database.unreadable().found();
  }
}
