package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Job;
import org.chordlog.store.json.StoredJson;

/** Reads everything that is stored; one sentence for each fault found. */
public final class StoreAudit {
  private static final int FAULTS = 100;
  private static final String TOTALS =
      "SELECT coalesce(t.job_id, r.job_id), r.n, t.readings, r.a, t.first_reading_id, r.z,"
          + " t.last_reading_id FROM (SELECT job_id, count(*) n, min(id) a, max(id) z FROM reading"
          + " WHERE kind = 'PRODUCT' GROUP BY job_id) r FULL JOIN job_total t ON t.job_id ="
          + " r.job_id WHERE (r.n, r.a, r.z) IS DISTINCT FROM (t.readings, t.first_reading_id,"
          + " t.last_reading_id)";
  private static final String HOLES =
      "SELECT station, min(station_sequence), max(station_sequence), count(*) FROM reading GROUP BY"
          + " station HAVING max(station_sequence) - min(station_sequence) + 1 <> count(*)";
  private static final String ALERTS =
      "SELECT a.id FROM alert a LEFT JOIN (SELECT alert_id, max(id) AS id FROM alert_event GROUP BY"
          + " alert_id) n ON n.alert_id = a.id LEFT JOIN alert_event e ON e.id = n.id WHERE"
          + " (a.last_event_id, a.kind, a.about, a.subject, a.state) IS DISTINCT FROM (e.id, e.kind, e.about,"
          + " e.subject, e.state)";

  private static final String RECORDED =
      "SELECT j.*, c.new_value AS recorded FROM job j LEFT JOIN (SELECT what, max(id) AS id FROM change"
          + " WHERE what LIKE 'job %' GROUP BY what) n ON n.what = 'job ' || j.id LEFT JOIN change c ON"
          + " c.id = n.id ORDER BY j.id";

  private final Connection connection;
  private final List<String> faults = new ArrayList<>();

  private StoreAudit(Connection connection) {
    this.connection = connection;
  }

  public static List<String> of(Connection connection) throws SQLException {
    StoreAudit audit = new StoreAudit(connection);
    audit.run();
    return audit.faults;
  }

  private void run() throws SQLException {
    sentences(TOTALS, row -> "job " + row.getLong(1) + ": its totals differ from its readings");
    sentences(
        HOLES,
        row ->
            "station %s: %s readings between sequence %s and %s"
                .formatted(row.getString(1), row.getLong(4), row.getLong(2), row.getLong(3)));
    sentences(ALERTS, row -> "alert " + row.getLong(1) + ": differs from its newest event");
    read("set-up", "SELECT id, body FROM set_up", row -> StoredJson.setUp(row.getString(2)));
    read("reading", ReadingRow.SELECT + "ORDER BY r.id", ReadingRow::map);
    read("profile of reading", ProfileRow.SELECT + "ORDER BY reading_id", ProfileRow::map);
    read("job", RECORDED, StoreAudit::asRecorded);
    read("alert event", AlertRow.EVENTS + "ORDER BY id", AlertRow::event);
    read("event", EventRow.SELECT + "ORDER BY id", EventRow::map);
    read("trace block", TraceRow.AUDITED, TraceRow::audited);
  }

  /** The row of a job is not in the chain of hashes; what the record of changes says of it is. */
  private static Job asRecorded(ResultSet row) throws SQLException {
    Job job = JobRow.map(row);
    String recorded = row.getString("recorded");
    if (recorded != null && !StoredJson.agrees(recorded, job)) {
      throw new IllegalStateException("differs from the newest change that is recorded of it");
    }
    if (!JobSearchText.of(job).equals(row.getString("search_text"))) {
      throw new IllegalStateException("the text by which it is found differs from its fields");
    }
    return job;
  }

  private void sentences(String sql, Sql.Mapper<String> sentence) throws SQLException {
    faults.addAll(Sql.list(connection, sql, sentence));
  }

  /** Turns every row into its record; the first column is the id. */
  private void read(String what, String sql, Sql.Mapper<?> mapper) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql);
        ResultSet rows = statement.executeQuery()) {
      while (rows.next() && faults.size() < FAULTS) {
        try {
          mapper.map(rows);
        } catch (RuntimeException e) {
          faults.add(what + " " + rows.getLong(1) + ": " + Unreadable.why(e));
        }
      }
    }
  }
}
