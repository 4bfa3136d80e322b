package org.chordlog.forward;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Recorded;
import org.chordlog.store.Plant;

/** Requests at the plant that this edge has not answered. The link's thread. */
record PlantRequests(Connection connection, String edge) {
  private static final int MOST = 100;

  List<Plant.Request> open() throws SQLException {
    try (PreparedStatement ask =
        connection.prepareStatement(
            "SELECT id, kind, body::text, made_micros, made_by FROM plant.request"
                + " WHERE edge_id = ?::uuid AND answered_micros IS NULL ORDER BY id LIMIT "
                + MOST)) {
      ask.setString(1, edge);
      List<Plant.Request> found = new ArrayList<>();
      try (ResultSet row = ask.executeQuery()) {
        while (row.next()) {
          found.add(request(row));
        }
      }
      connection.commit();
      return found;
    }
  }

  private Plant.Request request(ResultSet row) throws SQLException {
    return new Plant.Request(
        row.getLong(1),
        edge,
        Plant.RequestKind.valueOf(row.getString(2)),
        row.getString(3),
        new Recorded(row.getLong(4), row.getString(5)),
        null);
  }

  /** {@code refusal}: why it was not done, empty where it was. */
  void answer(long id, String refusal) throws SQLException {
    try (PreparedStatement update =
        connection.prepareStatement(
            "UPDATE plant.request SET answered_micros = plant.now_micros(), answer = ?"
                + " WHERE edge_id = ?::uuid AND id = ?")) {
      update.setString(1, refusal);
      update.setString(2, edge);
      update.setLong(3, id);
      update.executeUpdate();
    }
    connection.commit();
  }
}
