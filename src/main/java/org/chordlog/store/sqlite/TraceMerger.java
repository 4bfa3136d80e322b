package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.Sample;

/**
 * Joins the small blocks that a short delay makes into large ones that compress well: a station's
 * when they hold enough samples, or have waited long enough.
 */
final class TraceMerger {
  static final int ENOUGH_SAMPLES = 8_192;
  private static final long LONG_ENOUGH_MICROS = TimeUnit.MINUTES.toMicros(30);

  private static final String READY =
      "SELECT station FROM trace_block WHERE merged = 0 GROUP BY station"
          + " HAVING sum(sample_count) >= ? OR (count(*) > 1 AND min(last_wall_micros) < ?)";

  private static final String LOOSE =
      "SELECT id, body FROM trace_block WHERE station = ? AND merged = 0"
          + " ORDER BY first_sample LIMIT ?";

  private record Loose(long id, List<Sample> samples) {}

  private TraceMerger() {}

  /** Stations whose blocks are worth joining. */
  static List<String> ready(Connection connection, long nowMicros) throws SQLException {
    return Sql.list(
        connection, READY, row -> row.getString(1), ENOUGH_SAMPLES, nowMicros - LONG_ENOUGH_MICROS);
  }

  /** Joins a station's oldest small blocks; how many blocks went into one. */
  static int merge(Connection connection, String station) throws SQLException {
    List<Loose> blocks =
        Sql.list(
            connection,
            LOOSE,
            row -> new Loose(row.getLong(1), SampleBlock.decode(row.getBytes(2))),
            station,
            ENOUGH_SAMPLES / 4);
    List<Sample> samples = new ArrayList<>();
    int joined = 0;
    while (joined < blocks.size() && samples.size() < ENOUGH_SAMPLES) {
      samples.addAll(blocks.get(joined).samples());
      Sql.update(connection, "DELETE FROM trace_block WHERE id = ?", blocks.get(joined++).id());
    }
    if (!samples.isEmpty()) {
      TraceRow.insert(connection, station, samples, true);
    }
    return joined;
  }
}
