package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Sample;
import org.chordlog.store.Traces;

public record SqlTraces(Database database) implements Traces {
  private static final String ANY_OLDER =
      "SELECT count(*) FROM (SELECT 1 FROM trace_block WHERE last_wall_micros < ? LIMIT 1) old";

  private static final int PRUNED_AT_ONCE = 200;

  private static final String LAST_KEPT =
      "SELECT last_sample FROM trace_block WHERE station = ? ORDER BY first_sample DESC LIMIT 1";
  private static final String LAST_NAMED =
      "SELECT last_sample FROM reading WHERE station = ? ORDER BY station_sequence DESC LIMIT 1";
  private static final String BLOCKS =
      "SELECT body FROM trace_block WHERE station = ? AND last_sample >= ? AND first_sample"
          + " BETWEEN coalesce((SELECT max(first_sample) FROM trace_block"
          + " WHERE station = ? AND first_sample <= ?), 0) AND ? ORDER BY first_sample";

  @Override
  public boolean append(String station, List<Sample> samples) {
    return database.writes().append(station, samples);
  }

  @Override
  public List<Sample> range(String station, long firstSequence, long lastSequence, int limit) {
    return database.read(
        connection -> range(connection, station, firstSequence, lastSequence, limit));
  }

  private static List<Sample> range(
      Connection connection, String station, long first, long last, int limit) throws SQLException {
    List<Sample> found = new ArrayList<>();
    try (PreparedStatement statement =
            Sql.prepare(connection, BLOCKS, station, first, station, first, last);
        ResultSet rows = statement.executeQuery()) {
      while (found.size() < limit && rows.next()) {
        SampleBlock.decode(rows.getBytes(1)).stream()
            .filter(sample -> sample.sequence() >= first && sample.sequence() <= last)
            .limit(limit - found.size())
            .forEach(found::add);
      }
    }
    return found;
  }

  @Override
  public long lastSequence(String station) {
    return database.read(
        connection ->
            Math.max(
                Sql.number(connection, LAST_KEPT, station),
                Sql.number(connection, LAST_NAMED, station)));
  }

  /**
   * Looks first and writes only when something is old enough, so that an idle store commits
   * nothing.
   */
  @Override
  public int prune(long beforeMicros) {
    if (database.read(connection -> Sql.number(connection, ANY_OLDER, beforeMicros)) == 0) {
      return 0;
    }
    return database.write(
        connection ->
            Sql.update(
                connection,
                "DELETE FROM trace_block WHERE id IN (SELECT id FROM trace_block"
                    + " WHERE last_wall_micros < ? ORDER BY last_wall_micros LIMIT ?)",
                beforeMicros,
                PRUNED_AT_ONCE));
  }
}
