package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Recorded;

/** An event of a job as a row. */
final class EventRow {
  static final String SELECT = "SELECT * FROM job_event ";

  private EventRow() {}

  static JobEvent insert(Connection connection, JobEvent event) throws SQLException {
    Job unused = JobRow.required(connection, event.jobId());
    long id =
        Sql.insert(
            connection,
            "INSERT INTO job_event (job_id, machine, kind, after_reading_id, at_micros,"
                + " setting_before, setting_after, material_lot, note, made_by)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            event.jobId(),
            event.machine(),
            event.kind().name(),
            event.afterReadingId(),
            event.atMicros(),
            event.settingBefore(),
            event.settingAfter(),
            event.materialLot(),
            event.note(),
            event.by());
    return Sql.first(connection, SELECT + "WHERE id = ?", EventRow::map, id).orElseThrow();
  }

  static JobEvent map(ResultSet row) throws SQLException {
    return new JobEvent(
        row.getLong("id"),
        row.getLong("job_id"),
        row.getString("machine"),
        JobEvent.Kind.valueOf(row.getString("kind")),
        row.getLong("after_reading_id"),
        new JobEvent.Content(
            Sql.nullableDouble(row, "setting_before"),
            Sql.nullableDouble(row, "setting_after"),
            row.getString("material_lot"),
            row.getString("note")),
        new Recorded(row.getLong("at_micros"), row.getString("made_by")));
  }
}
