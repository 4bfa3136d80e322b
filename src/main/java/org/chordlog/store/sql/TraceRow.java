package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Sample;

/** A compressed block of samples as a row. */
@SuppressWarnings("ArrayRecordComponent")
public record TraceRow(
    String station, Sample first, Sample last, int count, boolean merged, byte[] body) {
  public static final String AUDITED =
      "SELECT id, first_sample, last_sample, sample_count, body FROM trace_block ORDER BY id";

  public static TraceRow of(String station, List<Sample> samples, boolean merged) {
    return new TraceRow(
        station,
        samples.get(0),
        samples.get(samples.size() - 1),
        samples.size(),
        merged,
        SampleBlock.encode(samples));
  }

  /** Decodes a block and checks it against the row's own columns. */
  static List<Sample> audited(ResultSet row) throws SQLException {
    List<Sample> samples = SampleBlock.decode(row.getBytes(5));
    if (samples.size() != row.getLong(4)
        || samples.get(0).sequence() != row.getLong(2)
        || samples.get(samples.size() - 1).sequence() != row.getLong(3)) {
      throw new IllegalStateException("its samples differ from what its row says");
    }
    return samples;
  }

  public void insert(Connection connection) throws SQLException {
    Sql.update(
        connection,
        "INSERT INTO trace_block (station, first_sample, last_sample, sample_count,"
            + " last_wall_micros, merged, body) VALUES (?, ?, ?, ?, ?, ?, ?)",
        station,
        first.sequence(),
        last.sequence(),
        count,
        last.wallMicros(),
        merged,
        body);
  }
}
