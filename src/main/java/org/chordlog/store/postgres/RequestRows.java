package org.chordlog.store.postgres;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Recorded;
import org.chordlog.store.Plant.Answer;
import org.chordlog.store.Plant.Request;
import org.chordlog.store.Plant.RequestKind;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/** What people at the plant ask of edges, as rows. */
final class RequestRows {
  private RequestRows() {}

  static Request insert(
      Connection connection, String edge, RequestKind kind, String body, Recorded by)
      throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO plant.request (edge_id, kind, body, made_micros, made_by)"
                + " VALUES (?::uuid, ?, ?, ?, ?)",
            edge,
            kind.name(),
            body,
            by.atMicros(),
            by.by());
    return new Request(id, edge, kind, body, by, null);
  }

  static List<Request> list(Connection connection, String edge, long beforeId, int limit)
      throws SQLException {
    return Sql.list(
        connection,
        "SELECT * FROM plant.request WHERE edge_id = ?::uuid AND id < ? ORDER BY id DESC LIMIT ?",
        RequestRows::request,
        edge,
        beforeId,
        limit);
  }

  private static Request request(ResultSet row) throws SQLException {
    return new Request(
        row.getLong("id"),
        row.getString("edge_id"),
        RequestKind.valueOf(row.getString("kind")),
        row.getString("body"),
        new Recorded(row.getLong("made_micros"), row.getString("made_by")),
        answer(row));
  }

  private static @Nullable Answer answer(ResultSet row) throws SQLException {
    long at = row.getLong("answered_micros");
    return row.wasNull() ? null : new Answer(at, row.getString("answer"));
  }
}
