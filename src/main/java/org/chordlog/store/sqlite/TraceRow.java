package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Sample;

/** A block of samples as a row. */
final class TraceRow {
  private TraceRow() {}

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
