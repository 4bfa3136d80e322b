package org.chordlog.store.sqlite;

import org.chordlog.store.FeedTable;

/** The statements that read the feed and the rows it names. */
final class FeedSql {
  static final String REST =
      "SELECT (SELECT count(*) FROM change_feed WHERE revision > ?1), coalesce(l.id, ?2) - ?2,"
          + " coalesce(f.wall_micros, 0), coalesce(l.wall_micros, 0)"
          + " FROM (SELECT max(id) AS newest FROM reading) n"
          + " LEFT JOIN reading l ON l.id = n.newest AND l.id > ?2"
          + " LEFT JOIN reading f ON f.id = (SELECT min(id) FROM reading WHERE id > ?2)";

  static final String NEWEST =
      "SELECT (SELECT coalesce(max(revision), 0) FROM change_feed),"
          + " (SELECT coalesce(max(id), 0) FROM reading)";

  /** The last change of a page of that many, and the tables of them. */
  static final String CHANGED =
      "SELECT table_name, max(revision), count(*) FROM (SELECT table_name, revision FROM change_feed"
          + " WHERE revision > ? ORDER BY revision LIMIT ?) GROUP BY table_name";

  static final String READINGS =
      "SELECT 0, r.* FROM reading r WHERE r.id > ? ORDER BY r.id LIMIT ?";

  static final String PROFILES =
      "SELECT 0, p.* FROM profile p WHERE p.reading_id > ? AND p.reading_id <= ?"
          + " ORDER BY p.reading_id, p.pass";

  private FeedSql() {}

  /** The key of a row in the feed. */
  static String key(FeedTable of) {
    return of == FeedTable.SPECIFICATION_REVISION ? "job_id * 1000000 + revision" : of.key().get(0);
  }

  /** Rows of a table whose newest change is above one number and up to another. */
  static String facts(FeedTable of) {
    String same =
        of == FeedTable.SPECIFICATION_REVISION
            ? "t.job_id = f.key / 1000000 AND t.revision = f.key % 1000000"
            : "t." + of.key().get(0) + " = f.key";
    return "SELECT f.revision, t.* FROM change_feed f CROSS JOIN %s t ON %s WHERE f.table_name = '%s' AND f.revision > ? AND f.revision <= ? ORDER BY f.revision"
        .formatted(of.table(), same, of.table());
  }
}
