package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import org.chordlog.measure.Job;
import org.chordlog.store.JobQuery;
import org.jspecify.annotations.Nullable;

/** A page of jobs. */
final class JobSearch {
  private JobSearch() {}

  static List<Job> list(Connection connection, JobQuery query) throws SQLException {
    Where where = where(query);
    return Sql.list(
        connection,
        JobRow.SELECT + where.sql() + "ORDER BY " + order(query.order()) + " LIMIT ?",
        JobRow::map,
        where.arguments(query.limit()));
  }

  private static Where where(JobQuery query) {
    Job.State state = query.state();
    Where where =
        new Where()
            .when(query.machine(), "machine = ?")
            .when(state == null ? null : state.name(), "state = ?")
            .when(query.openedFromMicros(), "opened_micros >= ?")
            .when(query.openedToMicros(), "opened_micros <= ?")
            .when(
                pattern(query.text()), "lower(name || ' ' || part || ' ' || material_lot) LIKE ?");
    return where.when(query.afterId(), after(query.order()));
  }

  private static @Nullable String pattern(@Nullable String text) {
    return text == null || text.isBlank()
        ? null
        : "%" + text.strip().toLowerCase(Locale.ROOT) + "%";
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
