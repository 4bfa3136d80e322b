package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.store.JobQuery;
import org.jspecify.annotations.Nullable;

/** A page of jobs. */
public final class JobSearch {
  private JobSearch() {}

  static List<Job> list(
      Connection connection, JobQuery query, Unreadable unreadable, Dialect dialect)
      throws SQLException {
    Where where = where(query, dialect);
    return unreadable.list(
        connection,
        Unreadable.Kind.JOB,
        JobRow.SELECT + where.sql() + "ORDER BY " + order(query.page().order()) + " LIMIT ?",
        JobRow::map,
        where.arguments(query.page().limit()));
  }

  private static Where where(JobQuery query, Dialect dialect) {
    return filtered(query.filter(), dialect)
        .when(query.page().afterId(), after(query.page().order()));
  }

  /** By the columns of {@code job}, whatever else is joined to it. */
  public static Where filtered(JobQuery.Filter filter, Dialect dialect) {
    Job.State state = filter.state();
    return new Where()
        .when(filter.machine(), "machine = ?")
        .when(state == null ? null : state.name(), "state = ?")
        .when(filter.openedFromMicros(), "opened_micros >= ?")
        .when(filter.openedToMicros(), "opened_micros <= ?")
        .when(folded(filter.text()), dialect.contains("search_text", "?"));
  }

  /** A row that has all columns of {@code job}. */
  public static Job job(ResultSet row) throws SQLException {
    return JobRow.map(row);
  }

  private static @Nullable String folded(@Nullable String text) {
    return text == null || text.isBlank() ? null : JobSearchText.fold(text.strip());
  }

  private static String after(JobQuery.Order order) {
    return switch (order) {
      case NEWEST -> "id < ?";
      case OLDEST -> "id > ?";
      case NAME -> "(name, id) > (SELECT name, id FROM job WHERE id = ?)";
    };
  }

  private static String order(JobQuery.Order order) {
    return switch (order) {
      case NEWEST -> "id DESC";
      case OLDEST -> "id";
      case NAME -> "name, id";
    };
  }
}
