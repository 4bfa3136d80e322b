package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Change;
import org.chordlog.store.Changes;

public record SqlChanges(Database database) implements Changes {
  @Override
  public Change add(Change change) {
    return database.write(connection -> insert(connection, change));
  }

  public static Change insert(Connection connection, Change change) throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO change (at_micros, made_by, what, old_value, new_value, why)"
                + " VALUES (?, ?, ?, ?, ?, ?)",
            change.atMicros(),
            change.by(),
            change.what(),
            change.from(),
            change.to(),
            change.why());
    return new Change(
        id,
        change.atMicros(),
        change.by(),
        change.what(),
        change.from(),
        change.to(),
        change.why());
  }

  @Override
  public List<Change> list(long beforeId, int limit) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM change WHERE id < ? ORDER BY id DESC LIMIT ?",
                SqlChanges::map,
                beforeId,
                limit));
  }

  @Override
  public List<Change> about(String what) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM change WHERE what = ? ORDER BY id",
                SqlChanges::map,
                what));
  }

  private static Change map(ResultSet row) throws SQLException {
    return new Change(
        row.getLong("id"),
        row.getLong("at_micros"),
        row.getString("made_by"),
        row.getString("what"),
        row.getString("old_value"),
        row.getString("new_value"),
        row.getString("why"));
  }
}
