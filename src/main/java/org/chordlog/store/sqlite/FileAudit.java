package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.StoreAudit;

/** Reads the whole file and everything in it; one sentence for each fault found. */
final class FileAudit {
  private static final int FAULTS = 100;

  private FileAudit() {}

  static List<String> of(Connection connection) throws SQLException {
    List<String> faults =
        new ArrayList<>(
            Sql.list(
                connection,
                "PRAGMA integrity_check(" + FAULTS + ")",
                row -> "file: " + row.getString(1)));
    faults.remove("file: ok");
    faults.addAll(
        Sql.list(
            connection,
            "PRAGMA foreign_key_check",
            row ->
                row.getString(1) + " " + row.getLong(2) + " names a missing " + row.getString(3)));
    faults.addAll(StoreAudit.of(connection));
    faults.addAll(FeedAudit.of(connection));
    return faults;
  }
}
