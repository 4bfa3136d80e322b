package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.store.json.StoredJson;

/** A job as a row. */
final class JobRow {
  static final String SELECT = "SELECT * FROM job ";

  private JobRow() {}

  static Job insert(Connection connection, Job job) throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO job (name, part, machine, station, section, material_lot, measured_face,"
                + " specification, plan, state, opened_micros) VALUES ("
                + "?, ".repeat(10)
                + "?)",
            columns(job));
    return withId(job, id);
  }

  static void update(Connection connection, Job job) throws SQLException {
    Object[] columns = Arrays.copyOf(columns(job), 12);
    columns[11] = job.id();
    Sql.update(
        connection,
        "UPDATE job SET name = ?, part = ?, machine = ?, station = ?, section = ?,"
            + " material_lot = ?, measured_face = ?, specification = ?, plan = ?, state = ?,"
            + " opened_micros = ? WHERE id = ?",
        columns);
  }

  private static Object[] columns(Job job) {
    return new Object[] {
      job.name(),
      job.part(),
      job.machine(),
      job.station(),
      StoredJson.of(job.section()),
      job.materialLot(),
      job.measuredFace().name(),
      StoredJson.of(job.specification()),
      StoredJson.of(job.plan()),
      job.state().name(),
      job.openedAtMicros()
    };
  }

  private static Job withId(Job job, long id) {
    return new Job(
        id,
        job.name(),
        job.part(),
        job.machine(),
        job.station(),
        job.section(),
        job.materialLot(),
        job.measuredFace(),
        job.specification(),
        job.plan(),
        job.state(),
        job.openedAtMicros());
  }

  static Job map(ResultSet row) throws SQLException {
    return new Job(
        row.getLong("id"),
        row.getString("name"),
        row.getString("part"),
        row.getString("machine"),
        row.getString("station"),
        StoredJson.section(row.getString("section")),
        row.getString("material_lot"),
        Face.valueOf(row.getString("measured_face")),
        StoredJson.specification(row.getString("specification")),
        StoredJson.plan(row.getString("plan")),
        Job.State.valueOf(row.getString("state")),
        row.getLong("opened_micros"));
  }
}
