package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Change;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SpecificationRevision;
import org.chordlog.store.json.StoredJson;

/** Revisions of the jobs' specifications; append-only. */
final class Revisions {
  private static final String SELECT =
      "SELECT *, lag(specification) OVER (ORDER BY revision) AS before"
          + " FROM specification_revision WHERE job_id = ? ORDER BY revision";

  private Revisions() {}

  /**
   * The job's specification becomes its revision, as said by the entry in the record of changes.
   */
  static void insert(Connection connection, Job job, Change change) throws SQLException {
    Sql.update(
        connection,
        "INSERT INTO specification_revision VALUES (?, ?, ?, ?, ?, ?)",
        job.id(),
        job.revision(),
        change.atMicros(),
        change.by(),
        change.why(),
        StoredJson.of(job.specification()));
  }

  static List<SpecificationRevision> of(Connection connection, long jobId) throws SQLException {
    return Sql.list(connection, SELECT, Revisions::map, jobId);
  }

  private static SpecificationRevision map(ResultSet row) throws SQLException {
    String before = row.getString("before");
    Specification from = before == null ? null : StoredJson.specification(before);
    return new SpecificationRevision(
        row.getLong("job_id"),
        row.getInt("revision"),
        row.getLong("at_micros"),
        row.getString("made_by"),
        row.getString("why"),
        from,
        StoredJson.specification(row.getString("specification")));
  }
}
