package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Sample;

/** A block of samples as a row. */
final class TraceRow {
  static final String AUDITED =
      "SELECT id, first_sample, last_sample, sample_count, body FROM trace_block ORDER BY id";

  private TraceRow() {}

  /** Decodes a block and compares it with its row. */
  static List<Sample> audited(ResultSet row) throws SQLException {
    List<Sample> samples = SampleBlock.decode(row.getBytes(5));
    if (samples.size() != row.getLong(4)
        || samples.get(0).sequence() != row.getLong(2)
        || samples.get(samples.size() - 1).sequence() != row.getLong(3)) {
      throw new IllegalStateException("holds other samples than it says");
    }
    return samples;
  }

  static void insert(Connection connection, String station, List<Sample> samples, boolean merged)
      throws SQLException {
    Sample last = samples.get(samples.size() - 1);
    Sql.update(
        connection,
        "INSERT INTO trace_block (station, first_sample, last_sample, sample_count,"
            + " last_wall_micros, merged, body) VALUES (?, ?, ?, ?, ?, ?, ?)",
        station,
        samples.get(0).sequence(),
        last.sequence(),
        samples.size(),
        last.wallMicros(),
        merged,
        SampleBlock.encode(samples));
  }
}
