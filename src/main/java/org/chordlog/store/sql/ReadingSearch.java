package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.store.ReadingQuery;

/**
 * A page of a job's readings; every combination of filters reads an index in the order asked for.
 */
public record ReadingSearch(ReadingQuery query) {
  static final String NEWEST_EXCLUSION =
      "(SELECT e.excluded FROM exclusion e WHERE e.reading_id = r.id ORDER BY e.id DESC LIMIT 1)";

  List<Reading> list(Connection connection, Unreadable unreadable) throws SQLException {
    Where where = where();
    return unreadable.list(
        connection,
        Unreadable.Kind.READING,
        sql(where),
        ReadingRow::map,
        where.arguments(query.page().limit()));
  }

  public String sql(Where where) {
    return ReadingRow.SELECT + where.sql() + "ORDER BY " + order() + " LIMIT ?";
  }

  public Where where() {
    Where where =
        new Where()
            .and("r.job_id = ?", query.jobId())
            .and("r.kind = ?", query.filter().kind().name())
            .when(query.filter().position(), "r.position = ?")
            .when(query.bounds().fromMicros(), "r.wall_micros >= ?")
            .when(query.bounds().toMicros(), "r.wall_micros <= ?");
    bounds(where);
    decision(where);
    excluded(where);
    return where.when(query.page().afterId(), after());
  }

  private void bounds(Where where) {
    if (query.bounds().aboveId() > 0) {
      where.and("r.id > ?", query.bounds().aboveId());
    }
    if (query.bounds().upToId() < Long.MAX_VALUE) {
      where.and("r.id <= ?", query.bounds().upToId());
    }
  }

  /** As a literal, so that SQLite can use the partial index of readings that do not conform. */
  private void decision(Where where) {
    Decision decision = query.filter().decision();
    if (decision != null) {
      where.and("r.decision = '" + decision.name() + "'");
    }
  }

  private void excluded(Where where) {
    Boolean excluded = query.filter().excluded();
    if (excluded != null && excluded) {
      where.and("r.id IN (SELECT reading_id FROM exclusion WHERE job_id = ?)", query.jobId());
      where.and(NEWEST_EXCLUSION + " = 1");
    } else if (excluded != null) {
      where.and("coalesce(" + NEWEST_EXCLUSION + ", 0) = 0");
    }
  }

  private String after() {
    String than = query.page().newestFirst() ? " < " : " > ";
    return query.bounds().byTime()
        ? "(r.wall_micros, r.id)" + than + "(SELECT wall_micros, id FROM reading WHERE id = ?)"
        : "r.id" + than + "?";
  }

  private String order() {
    String way = query.page().newestFirst() ? " DESC" : "";
    return (query.bounds().byTime() ? "r.wall_micros" + way + ", " : "") + "r.id" + way;
  }
}
