package org.chordlog.store.sqlite;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Mark;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;

/** A reading as a row, in the order of {@link #COLUMNS}. */
final class ReadingRow {
  static final String COLUMNS =
      "r.id, r.station, r.station_sequence, r.job_id, r.piece, r.position, r.mode, r.value_nm,"
          + " r.scatter_nm, r.sample_count, r.first_sample, r.last_sample, r.monotonic_nanos,"
          + " r.wall_micros, r.depth_nm, r.set_up_id, r.radius_mm, r.lower_mm, r.upper_mm,"
          + " r.curvature_per_mm, r.standard_uncertainty_per_mm, r.coverage_factor,"
          + " r.degrees_of_freedom, r.decision, r.marks, r.clock, r.raw_hex";
  static final String SELECT = "SELECT " + COLUMNS + " FROM reading r ";
  static final String INSERT =
      "INSERT INTO reading ("
          + COLUMNS.replace("r.", "")
          + ", run_id) VALUES ("
          + "?, ".repeat(27)
          + "?)";

  private ReadingRow() {}

  static void bind(PreparedStatement to, Reading reading, long id, long run) throws SQLException {
    to.setLong(1, id);
    to.setString(2, reading.station());
    to.setLong(3, reading.stationSequence());
    to.setLong(4, reading.jobId());
    to.setInt(5, reading.piece());
    to.setString(6, reading.position());
    bindCaptured(to, reading.captured());
    to.setLong(15, reading.depthNm());
    to.setLong(16, reading.setUpId());
    bindRadius(to, reading.radius());
    to.setString(24, reading.decision().name());
    to.setString(25, marks(reading.marks()));
    to.setString(26, reading.clock().name());
    to.setString(27, reading.rawHex());
    to.setLong(28, run);
  }

  private static void bindCaptured(PreparedStatement to, CapturedDepth captured)
      throws SQLException {
    to.setString(7, captured.mode().name());
    to.setLong(8, captured.valueNm());
    to.setLong(9, captured.scatterNm());
    to.setInt(10, captured.sampleCount());
    to.setLong(11, captured.firstSequence());
    to.setLong(12, captured.lastSequence());
    to.setLong(13, captured.monotonicNanos());
    to.setLong(14, captured.wallMicros());
  }

  private static void bindRadius(PreparedStatement to, RadiusEstimate radius) throws SQLException {
    bind(to, 17, radius.radiusMm());
    to.setDouble(18, radius.lowerMm());
    bind(to, 19, radius.upperMm());
    to.setDouble(20, radius.curvaturePerMm());
    to.setDouble(21, radius.standardUncertaintyPerMm());
    to.setDouble(22, radius.coverageFactor());
    to.setDouble(23, radius.degreesOfFreedom());
  }

  private static void bind(PreparedStatement to, int index, @Nullable Double value)
      throws SQLException {
    if (value == null) {
      to.setNull(index, Types.REAL);
    } else {
      to.setDouble(index, value);
    }
  }

  static Reading map(ResultSet row) throws SQLException {
    return new Reading(
        row.getLong(1),
        row.getString(2),
        row.getLong(3),
        row.getLong(4),
        row.getInt(5),
        row.getString(6),
        captured(row),
        row.getLong(15),
        row.getLong(16),
        radius(row),
        Decision.valueOf(row.getString(24)),
        marks(row.getString(25)),
        ClockState.valueOf(row.getString(26)),
        row.getString(27));
  }

  private static CapturedDepth captured(ResultSet row) throws SQLException {
    return new CapturedDepth(
        CaptureMode.valueOf(row.getString(7)),
        row.getLong(8),
        row.getLong(9),
        row.getInt(10),
        row.getLong(11),
        row.getLong(12),
        row.getLong(13),
        row.getLong(14));
  }

  private static RadiusEstimate radius(ResultSet row) throws SQLException {
    return new RadiusEstimate(
        nullable(row, 17),
        row.getDouble(18),
        nullable(row, 19),
        row.getDouble(20),
        row.getDouble(21),
        row.getDouble(22),
        row.getDouble(23));
  }

  static @Nullable Double nullable(ResultSet row, int index) throws SQLException {
    double value = row.getDouble(index);
    return row.wasNull() ? null : value;
  }

  private static String marks(Set<Mark> marks) {
    return marks.isEmpty()
        ? ""
        : marks.stream().sorted().map(Mark::name).collect(Collectors.joining(" "));
  }

  private static Set<Mark> marks(String names) {
    return names.isEmpty()
        ? Set.of()
        : Arrays.stream(names.split(" ", -1)).map(Mark::valueOf).collect(Collectors.toSet());
  }
}
