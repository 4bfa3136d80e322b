package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.chordlog.store.KeptReading;
import org.jspecify.annotations.Nullable;

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

  static long insert(Connection connection, Exclusion exclusion) throws SQLException {
    long job =
        Sql.number(connection, "SELECT job_id FROM reading WHERE id = ?", exclusion.readingId());
    if (job == 0) {
      throw new BadInput(
          "readingId", exclusion.readingId(), "does not exist", "the number of a reading");
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

  static Optional<Exclusion> newest(Connection connection, long readingId) throws SQLException {
    return Sql.first(
        connection,
        "SELECT * FROM exclusion WHERE reading_id = ? ORDER BY id DESC LIMIT 1",
        ExclusionRows::map,
        readingId);
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

  /** Each reading with its newest exclusion, if that excludes it. */
  List<KeptReading> join(List<Reading> readings) {
    String ids =
        readings.stream()
            .map(reading -> String.valueOf(reading.id()))
            .collect(Collectors.joining(",", "[", "]"));
    Map<Long, Exclusion> newest = new HashMap<>();
    list("reading_id IN (" + database.dialect().wholeNumbersOf() + ")", ids)
        .forEach(each -> newest.put(each.readingId(), each));
    return readings.stream().map(reading -> kept(reading, newest.get(reading.id()))).toList();
  }

  private static KeptReading kept(Reading reading, @Nullable Exclusion newest) {
    return new KeptReading(reading, newest != null && newest.excluded() ? newest : null);
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
