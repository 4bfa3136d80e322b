package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Plant.FoundJob;
import org.chordlog.store.sql.JobSearch;
import org.chordlog.store.sql.Unreadable;
import org.chordlog.store.sql.Where;
import org.jspecify.annotations.Nullable;

/** Jobs of all edges by one statement; {@code unreadable} takes those that are damaged. */
record FoundJobs(Unreadable unreadable) {
  /** The page first, so that only its rows are joined to what belongs to them. */
  private static final String JOBS =
      """
      SELECT j.*, coalesce(lot.material_lot, j.material_lot) AS lot_now,
        a.job_id IS NOT NULL AS active, coalesce(t.readings, 0) AS readings
      FROM (SELECT j.* FROM plant.job j JOIN plant.edge e USING (edge_id, incarnation)
        %s ORDER BY j.opened_micros DESC, j.edge_id, j.id DESC LIMIT ?) j
      LEFT JOIN plant.job_total t ON t.edge_id = j.edge_id AND t.incarnation = j.incarnation
        AND t.job_id = j.id
      LEFT JOIN plant.active_job a ON a.edge_id = j.edge_id AND a.incarnation = j.incarnation
        AND a.station = j.station AND a.job_id = j.id
      LEFT JOIN LATERAL (SELECT v.material_lot FROM plant.job_event v
        WHERE v.edge_id = j.edge_id AND v.incarnation = j.incarnation AND v.job_id = j.id
        AND v.kind = 'MATERIAL_LOT' AND v.material_lot <> ''
        AND NOT EXISTS (SELECT FROM plant.event_withdrawal w WHERE w.edge_id = v.edge_id
          AND w.incarnation = v.incarnation AND w.event_id = v.id)
        ORDER BY v.after_reading_id DESC, v.id DESC LIMIT 1) lot ON true
      ORDER BY j.opened_micros DESC, j.edge_id, j.id DESC\
      """;

  List<FoundJob> list(
      Connection connection, JobQuery.Filter filter, @Nullable String edge, int limit)
      throws SQLException {
    Where where = where(filter, edge);
    return unreadable.jobs(connection, sql(where), FoundJobs::found, where.arguments(limit));
  }

  static String sql(Where where) {
    return JOBS.formatted(where.sql());
  }

  static Where where(JobQuery.Filter filter, @Nullable String edge) {
    return JobSearch.filtered(filter, new PostgresDialect())
        .and("edge_id <> ?::uuid", PostgresPlant.OWN)
        .when(edge, "edge_id = ?::uuid");
  }

  private static FoundJob found(ResultSet row) throws SQLException {
    return new FoundJob(
        row.getString("edge_id"),
        JobSearch.job(row),
        row.getString("lot_now"),
        row.getBoolean("active"),
        row.getLong("readings"));
  }
}
