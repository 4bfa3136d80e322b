package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Change;
import org.chordlog.measure.EventWithdrawal;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.measure.Stale;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Jobs;
import org.chordlog.store.json.StoredJson;
import org.jspecify.annotations.Nullable;

record SqlJobs(Database database) implements Jobs {
  private static final String MATERIAL_LOT =
      "SELECT coalesce((SELECT material_lot FROM job_event WHERE job_id = ?"
          + " AND kind = 'MATERIAL_LOT' AND material_lot <> ''"
          + " AND id NOT IN (SELECT event_id FROM event_withdrawal)"
          + " ORDER BY after_reading_id DESC, id DESC LIMIT 1), material_lot)"
          + " FROM job WHERE id = ?";

  @Override
  public Job add(Job job, String by) {
    return database.write(connection -> insert(connection, job, by));
  }

  @Override
  public List<Job> addAll(List<Job> jobs, String by) {
    return database.write(
        connection -> {
          List<Job> kept = new ArrayList<>();
          for (Job job : jobs) {
            kept.add(insert(connection, job, by));
          }
          return kept;
        });
  }

  private static Job insert(Connection connection, Job job, String by) throws SQLException {
    Job kept = job.stored(JobRow.insert(connection, job.stored(0, 1)), 1);
    Revisions.insert(connection, kept, record(connection, by, kept, "", "new"));
    return kept;
  }

  @Override
  public Job update(Job job, String by, String why) {
    return database.write(connection -> update(connection, job, by, why));
  }

  @Override
  public Job update(Job job, Job before, String by, String why) {
    return database.write(
        connection -> {
          if (!JobRow.required(connection, job.id()).equals(before)) {
            throw new Stale("Job " + job.id() + " was changed meanwhile.");
          }
          return update(connection, job, by, why);
        });
  }

  private static Job update(Connection connection, Job job, String by, String why)
      throws SQLException {
    Job before = JobRow.required(connection, job.id());
    boolean revised = !job.specification().equals(before.specification());
    Job kept = job.stored(job.id(), before.revision() + (revised ? 1 : 0));
    JobRow.update(connection, kept);
    Change change = record(connection, by, kept, StoredJson.of(before), why);
    if (revised) {
      Revisions.insert(connection, kept, change);
    }
    return kept;
  }

  private static Change record(Connection connection, String by, Job kept, String from, String why)
      throws SQLException {
    return SqlChanges.insert(
        connection,
        new Change(0, Now.micros(), by, "job " + kept.id(), from, StoredJson.of(kept), why));
  }

  @Override
  public Optional<Job> find(long id) {
    return database.one(Unreadable.Kind.JOB, JobRow.SELECT + "WHERE id = ?", JobRow::map, id);
  }

  @Override
  public List<SpecificationRevision> revisions(long jobId) {
    return database.read(connection -> Revisions.of(connection, jobId));
  }

  @Override
  public List<Job> list(long beforeId, int limit) {
    return jobs("WHERE id < ? ORDER BY id DESC LIMIT ?", beforeId, limit);
  }

  @Override
  public List<Job> search(JobQuery query) {
    return database.read(
        connection -> JobSearch.list(connection, query, database.unreadable(), database.dialect()));
  }

  private List<Job> jobs(String where, @Nullable Object... arguments) {
    return database.list(Unreadable.Kind.JOB, JobRow.SELECT + where, JobRow::map, arguments);
  }

  @Override
  public Optional<Job> activeOn(String station) {
    return jobs("WHERE id = (SELECT job_id FROM active_job WHERE station = ?)", station).stream()
        .findFirst();
  }

  @Override
  public void activate(String station, long jobId) {
    database.write(
        connection -> activate(connection, station, JobRow.required(connection, jobId).id()));
  }

  private static int activate(Connection connection, String station, long jobId)
      throws SQLException {
    return Sql.put(
        connection,
        "UPDATE active_job SET job_id = ? WHERE station = ?",
        "INSERT INTO active_job (job_id, station) VALUES (?, ?)",
        jobId,
        station);
  }

  @Override
  public JobEvent add(JobEvent event) {
    return database.write(connection -> EventRow.insert(connection, event));
  }

  @Override
  public List<JobEvent> eventsOfJob(long jobId) {
    return eventsOfJob(jobId, 0);
  }

  @Override
  public List<JobEvent> eventsOfJob(long jobId, long afterId) {
    return events("WHERE job_id = ? AND id > ? ORDER BY id", jobId, afterId);
  }

  @Override
  public List<JobEvent> eventsOfMachine(String machine) {
    return eventsOfMachine(machine, 0);
  }

  @Override
  public List<JobEvent> eventsOfMachine(String machine, long afterId) {
    return events("WHERE machine = ? AND id > ? ORDER BY id", machine, afterId);
  }

  @Override
  public Optional<String> materialLot(long jobId) {
    return database.read(
        connection ->
            Sql.first(connection, MATERIAL_LOT, row -> row.getString(1), jobId, jobId)
                .filter(lot -> !lot.isEmpty()));
  }

  @Override
  public EventWithdrawal add(EventWithdrawal withdrawal) {
    return new Withdrawals(database).add(withdrawal);
  }

  @Override
  public JobEvent add(JobEvent event, EventWithdrawal ofWrong) {
    return database.write(
        connection -> {
          JobEvent kept = EventRow.insert(connection, event);
          long unused = Withdrawals.insert(connection, ofWrong);
          return kept;
        });
  }

  @Override
  public List<EventWithdrawal> withdrawalsOfJob(long jobId, long afterId) {
    return new Withdrawals(database).list("e.job_id = ? AND w.id > ?", jobId, afterId);
  }

  @Override
  public List<EventWithdrawal> withdrawalsOfMachine(String machine, long afterId) {
    return new Withdrawals(database).list("e.machine = ? AND w.id > ?", machine, afterId);
  }

  private List<JobEvent> events(String where, Object... arguments) {
    return database.list(Unreadable.Kind.EVENT, EventRow.SELECT + where, EventRow::map, arguments);
  }
}
