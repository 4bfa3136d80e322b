package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.chordlog.store.AnsweredRequests;
import org.chordlog.store.DoneAlready;
import org.chordlog.store.RequestKey;
import org.jspecify.annotations.Nullable;

/** Keys of requests that were done, as rows. */
public record SqlAnsweredRequests(Database database) implements AnsweredRequests {
  private static final String KNOWN = "SELECT count(*) FROM answered_request WHERE request_key = ?";

  /** The same, with the key of the request that this thread works on in the same transaction. */
  public static <T> Sql.Body<T> keyed(Sql.Body<T> body) {
    RequestKey key = RequestKey.current();
    return key == null
        ? body
        : connection -> {
          T result = body.run(connection);
          note(connection, key);
          return result;
        };
  }

  /**
   * Within the transaction of what the request does; the first of them counts. {@link DoneAlready},
   * which is to undo what it does, where another request wrote under that key.
   */
  public static void note(Connection connection, RequestKey key) throws SQLException {
    boolean known = Sql.number(connection, KNOWN, key.key()) > 0;
    if (known && !key.written()) {
      throw new DoneAlready(key);
    }
    if (!known) {
      insert(connection, key, Now.micros());
    }
    key.wrote();
  }

  private static void insert(Connection connection, RequestKey key, long now) throws SQLException {
    prune(connection, now);
    Sql.update(
        connection,
        "INSERT INTO answered_request (request_key, request, at_micros) VALUES (?, ?, ?)",
        key.key(),
        key.request(),
        now);
  }

  private static void prune(Connection connection, long now) throws SQLException {
    Sql.update(connection, "DELETE FROM answered_request WHERE at_micros < ?", now - KEPT_MICROS);
    Sql.update(
        connection,
        "DELETE FROM answered_request WHERE at_micros <= (SELECT at_micros FROM answered_request"
            + " ORDER BY at_micros DESC LIMIT 1 OFFSET ?)",
        MOST - 1);
  }

  @Override
  public Optional<Done> find(String key) {
    return database.read(connection -> find(connection, key));
  }

  @Override
  public Optional<Done> findAfterWrites(String key) {
    return database.write(connection -> find(connection, key));
  }

  private static Optional<Done> find(Connection connection, String key) throws SQLException {
    return Sql.first(
        connection,
        "SELECT request, status, media_type, body FROM answered_request WHERE request_key = ?",
        SqlAnsweredRequests::done,
        key);
  }

  private static Done done(ResultSet row) throws SQLException {
    return new Done(row.getString("request"), answer(row));
  }

  private static @Nullable Answer answer(ResultSet row) throws SQLException {
    int status = row.getInt("status");
    return row.wasNull()
        ? null
        : new Answer(status, row.getString("media_type"), row.getBytes("body"));
  }

  @Override
  public void answer(String key, Answer answer) {
    database.write(
        connection ->
            Sql.update(
                connection,
                "UPDATE answered_request SET status = ?, media_type = ?, body = ?"
                    + " WHERE request_key = ?",
                answer.status(),
                answer.mediaType(),
                answer.body(),
                key));
  }

  @Override
  public void forget(String key) {
    database.write(
        connection ->
            Sql.update(connection, "DELETE FROM answered_request WHERE request_key = ?", key));
  }
}
