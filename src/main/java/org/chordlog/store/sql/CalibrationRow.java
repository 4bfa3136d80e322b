package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Change;
import org.chordlog.measure.Recorded;
import org.chordlog.store.json.StoredJson;

/** A calibration as a row; its covariance as JSON. */
final class CalibrationRow {
  static final String SELECT = "SELECT * FROM calibration ";

  private CalibrationRow() {}

  static Calibration insert(Connection connection, Calibration calibration) throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO calibration (station, bridge_id, span_mm, zero_offset_mm,"
                + " foot_radius_mm, covariance, degrees_of_freedom, taken_micros, due_micros,"
                + " taken_by, summary) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            calibration.station(),
            Bridges.required(connection, calibration.bridgeId()).id(),
            calibration.spanMm(),
            calibration.zeroOffsetMm(),
            calibration.footRadiusMm(),
            StoredJson.of(calibration.covariance()),
            calibration.degreesOfFreedom(),
            calibration.takenAtMicros(),
            calibration.dueAtMicros(),
            calibration.takenBy(),
            calibration.summary());
    return Sql.first(connection, SELECT + "WHERE id = ?", CalibrationRow::map, id).orElseThrow();
  }

  /** As in force from now on, by whoever brought it. */
  static void record(Connection connection, Calibration stored, String by, String why)
      throws SQLException {
    String what = "calibration of " + stored.station();
    SqlChanges.insert(
        connection, new Change(0, Now.micros(), by, what, "", StoredJson.of(stored), why));
  }

  static Calibration map(ResultSet row) throws SQLException {
    return new Calibration(
        row.getLong("id"),
        row.getString("station"),
        row.getLong("bridge_id"),
        new Calibration.Fitted(
            row.getDouble("span_mm"),
            row.getDouble("zero_offset_mm"),
            row.getDouble("foot_radius_mm"),
            StoredJson.matrix(row.getString("covariance")),
            row.getDouble("degrees_of_freedom")),
        new Recorded(row.getLong("taken_micros"), row.getString("taken_by")),
        row.getLong("due_micros"),
        row.getString("summary"));
  }
}
