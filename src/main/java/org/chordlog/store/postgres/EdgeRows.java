package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.chordlog.store.Plant;
import org.chordlog.store.Plant.Branch;
import org.chordlog.store.Plant.Delivered;
import org.chordlog.store.Plant.Edge;
import org.chordlog.store.Plant.State;
import org.chordlog.store.Plant.Versions;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/** Edges with what they delivered last, as rows. */
final class EdgeRows {
  /** Also those that were added and never spoke, under an id that no database has. */
  private static final String ALL =
      "(SELECT edge_id, name, site, incarnation, schema_version, program_version, seen_micros,"
          + " clock_ahead_micros, backlog_rows, newest_edge_micros, trouble FROM plant.edge UNION"
          + " ALL SELECT md5('login ' || name)::uuid, edge_name, site, 1, 0, '', 0, 0, 0, 0, ''"
          + " FROM plant.login WHERE edge_id IS NULL)";

  /** The newest row of the ledger by its index, for each edge. */
  private static final String EDGES =
      "SELECT e.*, b.last_reading_id, b.received_micros, plant.now_micros() AS now_micros"
          + " FROM "
          + ALL
          + " e LEFT JOIN LATERAL (SELECT last_reading_id, received_micros"
          + " FROM plant.batch WHERE edge_id = e.edge_id AND incarnation = e.incarnation"
          + " ORDER BY number DESC LIMIT 1) b ON true WHERE e.edge_id <> '"
          + PostgresPlant.OWN
          + "' ORDER BY e.site, e.name";

  /**
   * A history and the next one's beginning, which is its end. The first one of most is in the
   * ledger alone.
   */
  private static final String BRANCHES =
      "SELECT n.edge_id, p.incarnation, n.begins_after_reading_id, n.begun_micros, n.why"
          + " FROM plant.branch n JOIN LATERAL (SELECT greatest((SELECT max(incarnation)"
          + " FROM plant.branch WHERE edge_id = n.edge_id AND incarnation < n.incarnation),"
          + " (SELECT max(incarnation) FROM plant.batch WHERE edge_id = n.edge_id"
          + " AND incarnation < n.incarnation)) AS incarnation) p"
          + " ON p.incarnation IS NOT NULL ORDER BY n.edge_id, n.incarnation";

  private record OfEdge(String edge, Branch branch) {}

  private EdgeRows() {}

  static List<Edge> all(Connection connection) throws SQLException {
    Map<String, List<Branch>> branches =
        Sql.list(connection, BRANCHES, EdgeRows::branch).stream()
            .collect(
                Collectors.groupingBy(
                    OfEdge::edge, Collectors.mapping(OfEdge::branch, Collectors.toList())));
    return Sql.list(
        connection,
        EDGES,
        row -> edge(row, branches.getOrDefault(row.getString("edge_id"), List.of())));
  }

  private static OfEdge branch(ResultSet row) throws SQLException {
    return new OfEdge(
        row.getString(1),
        new Branch(row.getInt(2), row.getLong(3), row.getLong(4), row.getString(5)));
  }

  private static Edge edge(ResultSet row, List<Branch> formerly) throws SQLException {
    @Nullable Delivered delivered = delivered(row);
    return new Edge(
        row.getString("edge_id"),
        row.getString("name"),
        row.getString("site"),
        row.getInt("incarnation"),
        new Versions(row.getString("program_version"), row.getInt("schema_version")),
        state(delivered, row.getLong("now_micros")),
        row.getString("trouble"),
        delivered,
        formerly);
  }

  private static @Nullable Delivered delivered(ResultSet row) throws SQLException {
    long last = row.getLong("last_reading_id");
    return row.wasNull()
        ? null
        : new Delivered(
            last,
            row.getLong("received_micros"),
            row.getLong("seen_micros"),
            row.getLong("backlog_rows"),
            row.getLong("newest_edge_micros"),
            row.getLong("clock_ahead_micros"));
  }

  private static State state(@Nullable Delivered delivered, long nowMicros) {
    if (delivered == null) {
      return State.NEW;
    }
    long silence = nowMicros - Math.max(delivered.seenMicros(), delivered.receivedMicros());
    if (silence > TimeUnit.SECONDS.toMicros(Plant.SILENT_SECONDS)) {
      return State.SILENT;
    }
    return delivered.backlogRows() > 0 ? State.BEHIND : State.COMPLETE;
  }
}
