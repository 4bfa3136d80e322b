package org.chordlog.forward;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.store.postgres.PlantConnections;

/** Whether the plant can be reached with the settings; nothing is delivered or changed. */
public record PlantCheck(PlantSettings settings) {
  /** {@code said}: what was seen, in a sentence. */
  public record Seen(boolean well, String said) {}

  /**
   * Connects, signs in and reads, and changes nothing; whatever goes wrong is in what it returns.
   */
  public Seen run() {
    try (Connection connection = PlantConnections.open(settings.address(), "chordlog check")) {
      return new Seen(true, seen(connection));
    } catch (SQLException | BadInput e) {
      return new Seen(false, ForwardProblem.of(e).sentence());
    }
  }

  private String seen(Connection connection) throws SQLException {
    try (PreparedStatement ask =
            connection.prepareStatement(
                "SELECT (SELECT max(version) FROM plant.version), (SELECT count(*) FROM plant.edge)");
        ResultSet row = ask.executeQuery()) {
      row.next();
      return "The plant's database answers and takes this user (its schema version is %s). %s"
          .formatted(
              row.getInt(1),
              row.getInt(2) == 0
                  ? "Nothing was delivered with this user yet."
                  : "This user has delivered before.");
    }
  }
}
