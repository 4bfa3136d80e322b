package org.chordlog.store.sql;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Mark;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;

/** A reading as a row. It is written and read in the order of {@link #COLUMNS}. */
public final class ReadingRow {
  public static final List<String> COLUMNS =
      List.of(
          "id",
          "station",
          "station_sequence",
          "job_id",
          "piece",
          "position",
          "mode",
          "value_nm",
          "scatter_nm",
          "sample_count",
          "first_sample",
          "last_sample",
          "monotonic_nanos",
          "wall_micros",
          "depth_nm",
          "set_up_id",
          "radius_mm",
          "lower_mm",
          "upper_mm",
          "curvature_per_mm",
          "standard_uncertainty_per_mm",
          "coverage_factor",
          "degrees_of_freedom",
          "decision",
          "marks",
          "clock",
          "raw_hex",
          "kind",
          "pass",
          "revision",
          "measured_by",
          "material_lot");

  public static final String SELECT =
      COLUMNS.stream().collect(Collectors.joining(", r.", "SELECT r.", " FROM reading r "));

  public static final String INSERT =
      "INSERT INTO reading (%s, run_id) VALUES (%s)"
          .formatted(String.join(", ", COLUMNS), Sql.places(COLUMNS.size() + 1));

  private static final ThreadLocal<RowBytes> BYTES = ThreadLocal.withInitial(RowBytes::new);

  private ReadingRow() {}

  public static void bind(PreparedStatement statement, Reading reading, long id, long run)
      throws SQLException {
    values(new Binder(statement).add(id), reading, run);
  }

  /** The SHA-256 of the row without its id, which is not known before the commit; any thread. */
  public static byte[] hash(Reading reading, long run) {
    RowBytes bytes = BYTES.get();
    bytes.begin();
    try {
      values(bytes, reading, run);
    } catch (SQLException e) {
      throw new IllegalStateException("nothing is asked of a database here", e);
    }
    return bytes.hash();
  }

  /** In the order of {@link #COLUMNS}, without the id; the run last. */
  private static void values(RowValues to, Reading reading, long run) throws SQLException {
    to.add(reading.station()).add(reading.stationSequence());
    to.add(reading.jobId()).add(reading.piece()).add(reading.position());
    bind(to, reading.captured());
    to.add(reading.depthNm()).add(reading.setUpId());
    bind(to, reading.radius());
    to.add(reading.decision().name()).add(marks(reading.marks()));
    to.add(reading.clock().name()).add(reading.rawHex());
    bind(to, reading.circumstances());
    to.add(run);
  }

  private static void bind(RowValues to, CapturedDepth captured) throws SQLException {
    to.add(captured.mode().name()).add(captured.valueNm()).add(captured.scatterNm());
    to.add(captured.sampleCount()).add(captured.firstSequence()).add(captured.lastSequence());
    to.add(captured.monotonicNanos()).add(captured.wallMicros());
  }

  private static void bind(RowValues to, RadiusEstimate radius) throws SQLException {
    to.addNullable(radius.radiusMm()).add(radius.lowerMm()).addNullable(radius.upperMm());
    to.add(radius.curvaturePerMm()).add(radius.standardUncertaintyPerMm());
    to.add(radius.coverageFactor()).add(radius.degreesOfFreedom());
  }

  private static void bind(RowValues to, Circumstances circumstances) throws SQLException {
    to.add(circumstances.kind().name()).add(circumstances.pass());
    to.addNullable(circumstances.revision());
    to.add(circumstances.measuredBy()).add(circumstances.materialLot());
  }

  static Reading map(ResultSet row) throws SQLException {
    return map(new Cells(row));
  }

  /** The cells are read in the order of {@link #COLUMNS}. */
  static Reading map(Cells from) throws SQLException {
    long id = from.aLong();
    String station = from.text();
    long sequence = from.aLong();
    Reading.Place place = new Reading.Place(from.aLong(), from.anInt(), from.text());
    Reading.Measured measured = new Reading.Measured(captured(from), from.aLong(), from.aLong());
    Reading.Result result =
        new Reading.Result(radius(from), Decision.valueOf(from.text()), marks(from.text()));
    ClockState clock = ClockState.valueOf(from.text());
    Reading.Source source = new Reading.Source(station, sequence, clock, from.text());
    return new Reading(id, source, place, measured, result, circumstances(from));
  }

  private static CapturedDepth captured(Cells from) throws SQLException {
    return new CapturedDepth(
        CaptureMode.valueOf(from.text()),
        from.aLong(),
        from.aLong(),
        from.anInt(),
        new CapturedDepth.SampleRange(from.aLong(), from.aLong()),
        new CapturedDepth.Moment(from.aLong(), from.aLong()));
  }

  private static RadiusEstimate radius(Cells from) throws SQLException {
    return new RadiusEstimate(
        from.nullableDouble(),
        from.aDouble(),
        from.nullableDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble(),
        from.aDouble());
  }

  private static Circumstances circumstances(Cells from) throws SQLException {
    return new Circumstances(
        ReadingKind.valueOf(from.text()),
        from.anInt(),
        from.nullableInt(),
        from.nullableText(),
        from.nullableText());
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
