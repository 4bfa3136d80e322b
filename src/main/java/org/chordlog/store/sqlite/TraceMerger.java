package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.chordlog.measure.Sample;
import org.chordlog.store.sql.Database;
import org.chordlog.store.sql.SampleBlock;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.TraceRow;

/**
 * Merges small trace blocks, which frequent commits make, into large ones that compress well. They
 * are read, unpacked and compressed on the caller's thread; the writer only swaps the rows. Only
 * the housekeeper's thread may use it, since two merges at once would take the same blocks.
 */
record TraceMerger(Database database, String station) {
  static final int ENOUGH_SAMPLES = 8_192;
  private static final long LONG_ENOUGH_MICROS = TimeUnit.MINUTES.toMicros(30);

  /** Stations whose blocks hold enough samples, or have waited long enough. */
  private static final String READY =
      "SELECT station FROM trace_block WHERE merged = 0 GROUP BY station"
          + " HAVING sum(sample_count) >= ? OR (count(*) > 1 AND min(last_wall_micros) < ?)";

  /**
   * The oldest small blocks up to the next large one, so that a joined block never spans another: a
   * range is read from the newest block that begins before it.
   */
  private static final String SMALL_BLOCKS =
      "SELECT first_sample, body FROM trace_block WHERE station = ?1 AND merged = 0"
          + " AND first_sample < coalesce((SELECT min(first_sample) FROM trace_block"
          + " WHERE station = ?1 AND merged = 1 AND first_sample > (SELECT min(first_sample)"
          + " FROM trace_block WHERE station = ?1 AND merged = 0)), ?2)"
          + " ORDER BY first_sample LIMIT ?3";

  private static final String REMOVE =
      "DELETE FROM trace_block WHERE station = ? AND merged = 0 AND first_sample BETWEEN ? AND ?";

  @SuppressWarnings("ArrayRecordComponent")
  private record SmallBlock(long firstSample, byte[] body) {}

  static List<String> ready(Connection connection, long nowMicros) throws SQLException {
    return Sql.list(
        connection, READY, row -> row.getString(1), ENOUGH_SAMPLES, nowMicros - LONG_ENOUGH_MICROS);
  }

  /** Merges the oldest small blocks. */
  void merge() {
    List<SmallBlock> blocks = database.read(this::smallBlocks);
    List<Sample> samples = new ArrayList<>();
    int joined = 0;
    while (joined < blocks.size() && samples.size() < ENOUGH_SAMPLES) {
      samples.addAll(SampleBlock.decode(blocks.get(joined++).body()));
    }
    if (!samples.isEmpty()) {
      TraceRow merged = TraceRow.of(station, samples, true);
      int count = joined;
      long first = blocks.get(0).firstSample();
      long last = blocks.get(joined - 1).firstSample();
      int unused = database.write(connection -> exchange(connection, merged, first, last, count));
    }
  }

  private List<SmallBlock> smallBlocks(Connection connection) throws SQLException {
    return Sql.list(
        connection,
        SMALL_BLOCKS,
        row -> new SmallBlock(row.getLong(1), row.getBytes(2)),
        station,
        Long.MAX_VALUE,
        ENOUGH_SAMPLES / 4);
  }

  private int exchange(Connection connection, TraceRow merged, long first, long last, int count)
      throws SQLException {
    int removed = Sql.update(connection, REMOVE, station, first, last);
    if (removed != count) {
      throw new IllegalStateException(removed + " blocks to merge instead of " + count);
    }
    merged.insert(connection);
    return removed;
  }
}
