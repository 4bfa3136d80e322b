package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;

/** Exclusions as rows; append-only. */
record ExclusionRows(Database database) {
  Exclusion add(Exclusion exclusion) {
    long id = database.write(connection -> insert(connection, exclusion));
    return new Exclusion(
        id,
        exclusion.readingId(),
        exclusion.excluded(),
        exclusion.reason(),
        exclusion.atMicros(),
        exclusion.by());
  }

  private static long insert(Connection connection, Exclusion exclusion) throws SQLException {
    long job =
        Sql.number(connection, "SELECT job_id FROM reading WHERE id = ?", exclusion.readingId());
    if (job == 0) {
      throw new BadInput(
          "readingId", exclusion.readingId(), "does not exist", "the id of a reading");
    }
    return Sql.insert(
        connection,
        "INSERT INTO exclusion (reading_id, job_id, excluded, reason, at_micros, made_by)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        exclusion.readingId(),
        job,
        exclusion.excluded(),
        exclusion.reason(),
        exclusion.atMicros(),
        exclusion.by());
  }

  List<Exclusion> list(String condition, Object... arguments) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM exclusion WHERE " + condition + " ORDER BY id",
                ExclusionRows::map,
                arguments));
  }

  private static Exclusion map(ResultSet row) throws SQLException {
    return new Exclusion(
        row.getLong("id"),
        row.getLong("reading_id"),
        row.getBoolean("excluded"),
        row.getString("reason"),
        row.getLong("at_micros"),
        row.getString("made_by"));
  }
}
