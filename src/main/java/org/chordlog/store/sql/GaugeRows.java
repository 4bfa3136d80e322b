package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.jspecify.annotations.Nullable;

/** Zeros and interim checks as rows. */
final class GaugeRows {
  /** Stored radius of a check whose master read flat. */
  private static final double FLAT = Double.POSITIVE_INFINITY;

  private GaugeRows() {}

  static Zero insert(Connection connection, Zero zero) throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO zero (station, bridge_id, value_nm, scatter_nm, sample_count,"
                + " taken_micros, taken_by) VALUES (?, ?, ?, ?, ?, ?, ?)",
            zero.station(),
            Bridges.required(connection, zero.bridgeId()).id(),
            zero.valueNm(),
            zero.scatterNm(),
            zero.sampleCount(),
            zero.takenAtMicros(),
            zero.takenBy());
    return Sql.first(connection, "SELECT * FROM zero WHERE id = ?", GaugeRows::zero, id)
        .orElseThrow();
  }

  static InterimCheck insert(Connection connection, InterimCheck check) throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO interim_check (station, bridge_id, master_id, radius_mm,"
                + " master_radius_mm, limit_mm, passed, taken_micros, taken_by)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
            check.station(),
            Bridges.required(connection, check.bridgeId()).id(),
            Masters.required(connection, check.masterId()).id(),
            check.radiusMm() == null ? FLAT : check.radiusMm(),
            check.masterRadiusMm(),
            check.limitMm(),
            check.passed(),
            check.takenAtMicros(),
            check.takenBy());
    return Sql.first(connection, "SELECT * FROM interim_check WHERE id = ?", GaugeRows::check, id)
        .orElseThrow();
  }

  static Zero zero(ResultSet row) throws SQLException {
    return new Zero(
        row.getLong("id"),
        row.getString("station"),
        row.getLong("bridge_id"),
        row.getLong("value_nm"),
        row.getLong("scatter_nm"),
        row.getInt("sample_count"),
        new Recorded(row.getLong("taken_micros"), row.getString("taken_by")));
  }

  static InterimCheck check(ResultSet row) throws SQLException {
    return new InterimCheck(
        row.getLong("id"),
        row.getString("station"),
        row.getLong("bridge_id"),
        row.getLong("master_id"),
        new InterimCheck.Comparison(
            radius(row.getDouble("radius_mm")),
            row.getDouble("master_radius_mm"),
            row.getDouble("limit_mm"),
            row.getBoolean("passed")),
        new Recorded(row.getLong("taken_micros"), row.getString("taken_by")));
  }

  private static @Nullable Double radius(double kept) {
    return kept == FLAT ? null : (Double) kept;
  }
}
