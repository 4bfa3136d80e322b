package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.Reading;

/**
 * Readings of all jobs on a machine in order of id, merged from the index of each job; jobs without
 * newer readings are skipped.
 */
record MachineReadings(Connection connection, String machine, Unreadable unreadable) {
  private static final String JOBS =
      "SELECT t.job_id, t.first_reading_id FROM job j JOIN job_total t ON t.job_id = j.id"
          + " WHERE j.machine = ? AND t.last_reading_id > ? ORDER BY t.first_reading_id";

  private record Span(long jobId, long firstId) {}

  List<Reading> list(long afterId, int limit) throws SQLException {
    List<Reading> page = new ArrayList<>();
    for (Span span : spans(afterId)) {
      if (page.size() == limit && span.firstId() > page.get(limit - 1).id()) {
        break;
      }
      page.addAll(ofJob(span.jobId(), afterId, limit));
      page.sort(Comparator.comparingLong(Reading::id));
      page.subList(Math.min(limit, page.size()), page.size()).clear();
    }
    return page;
  }

  private List<Span> spans(long afterId) throws SQLException {
    return Sql.list(
        connection, JOBS, row -> new Span(row.getLong(1), row.getLong(2)), machine, afterId);
  }

  private List<Reading> ofJob(long jobId, long afterId, int limit) throws SQLException {
    return unreadable.list(
        connection,
        Unreadable.Kind.READING,
        ReadingRow.SELECT
            + "WHERE r.job_id = ? AND r.id > ? AND r.kind = 'PRODUCT' ORDER BY r.id LIMIT ?",
        ReadingRow::map,
        jobId,
        afterId,
        limit);
  }
}
