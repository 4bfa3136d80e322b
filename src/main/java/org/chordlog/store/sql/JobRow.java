package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.store.json.StoredJson;
import org.jspecify.annotations.Nullable;

/** A job as a row. */
final class JobRow {
  static final String SELECT = "SELECT * FROM job ";

  /** In the order of {@link #values}. */
  private static final List<String> COLUMNS =
      List.of(
          "name",
          "part",
          "machine",
          "station",
          "section",
          "material_lot",
          "measured_face",
          "specification",
          "plan",
          "state",
          "opened_micros",
          "customer",
          "drawing_revision",
          "developed_length_mm",
          "developed_angle_degrees",
          "revision",
          "search_text");

  private static final String INSERT =
      "INSERT INTO job (%s) VALUES (%s)"
          .formatted(String.join(", ", COLUMNS), Sql.places(COLUMNS.size()));

  private static final String UPDATE =
      COLUMNS.stream()
          .map(column -> column + " = ?")
          .collect(Collectors.joining(", ", "UPDATE job SET ", " WHERE id = ?"));

  private JobRow() {}

  static long insert(Connection connection, Job job) throws SQLException {
    return Sql.insert(connection, INSERT, values(job));
  }

  static void update(Connection connection, Job job) throws SQLException {
    @Nullable Object[] values = Arrays.copyOf(values(job), COLUMNS.size() + 1);
    values[COLUMNS.size()] = job.id();
    Sql.update(connection, UPDATE, values);
  }

  private static @Nullable Object[] values(Job job) {
    OrderDetails details = job.details();
    return new @Nullable Object[] {
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
      job.openedAtMicros(),
      details.customer(),
      details.drawingRevision(),
      details.developedLengthMm(),
      details.developedAngleDegrees(),
      job.revision(),
      JobSearchText.of(job)
    };
  }

  static Job required(Connection connection, long id) throws SQLException {
    return Sql.first(connection, SELECT + "WHERE id = ?", JobRow::map, id)
        .orElseThrow(() -> new BadInput("jobId", id, "does not exist", "the number of a job"));
  }

  static Job map(ResultSet row) throws SQLException {
    return new Job(
        row.getLong("id"),
        row.getInt("revision"),
        new Job.Order(
            row.getString("name"),
            row.getString("part"),
            row.getString("material_lot"),
            details(row)),
        new Job.Workplace(row.getString("machine"), row.getString("station")),
        new Job.Inspection(
            StoredJson.section(row.getString("section")),
            Face.valueOf(row.getString("measured_face")),
            StoredJson.specification(row.getString("specification")),
            StoredJson.plan(row.getString("plan"))),
        Job.State.valueOf(row.getString("state")),
        row.getLong("opened_micros"));
  }

  private static OrderDetails details(ResultSet row) throws SQLException {
    return new OrderDetails(
        row.getString("customer"),
        row.getString("drawing_revision"),
        Sql.nullableDouble(row, "developed_length_mm"),
        Sql.nullableDouble(row, "developed_angle_degrees"));
  }
}
