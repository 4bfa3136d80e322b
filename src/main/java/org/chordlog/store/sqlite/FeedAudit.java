package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.store.FeedTable;
import org.chordlog.store.sql.Sql;

/** Which records of facts, of those that a plant must hear of, the feed does not name. */
final class FeedAudit {
  private static final int MOST = 10;

  private FeedAudit() {}

  static List<String> of(Connection connection) throws SQLException {
    List<String> faults = new ArrayList<>();
    for (FeedTable each : FeedTable.values()) {
      if (each.holdsFacts()) {
        faults.addAll(missing(connection, each));
      }
    }
    return faults;
  }

  private static List<String> missing(Connection connection, FeedTable of) throws SQLException {
    String sql =
        "SELECT k FROM (SELECT %s AS k FROM %s) WHERE NOT EXISTS (SELECT 1 FROM change_feed WHERE table_name = '%s' AND key = k) LIMIT %s"
            .formatted(FeedSql.key(of), of.table(), of.table(), MOST);
    return Sql.list(
        connection,
        sql,
        row ->
            "feed for the plant: %s %s is missing in it".formatted(of.table(), row.getString(1)));
  }
}
