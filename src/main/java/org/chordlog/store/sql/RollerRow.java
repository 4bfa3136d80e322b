package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Face;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;

/** A roller of a machine as a row; append-only, the newest row of a name holds. */
final class RollerRow {
  static final String IN_FORCE =
      "SELECT r.* FROM roller r JOIN (SELECT min(id) first_id, max(id) newest_id FROM roller"
          + " WHERE machine = ? GROUP BY name) n ON n.newest_id = r.id WHERE r.removed = 0"
          + " ORDER BY n.first_id";

  private RollerRow() {}

  static long insert(
      Connection connection, String machine, Roller roller, boolean removed, Recorded by)
      throws SQLException {
    return Sql.insert(
        connection,
        "INSERT INTO roller (machine, name, diameter_mm, diameter_uncertainty_mm, side, driven,"
            + " removed, at_micros, made_by) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
        machine,
        roller.name(),
        roller.diameterMm(),
        roller.diameterUncertaintyMm(),
        roller.side().name(),
        roller.driven() ? 1 : 0,
        removed ? 1 : 0,
        by.atMicros(),
        by.by());
  }

  static long remove(Connection connection, String machine, String name, Recorded by)
      throws SQLException {
    Roller roller =
        Sql.list(connection, IN_FORCE, RollerRow::map, machine).stream()
            .filter(each -> each.name().equals(name))
            .findFirst()
            .orElseThrow(
                () -> new BadInput("roller", name, "does not exist", "a roller of this machine"));
    return insert(connection, machine, roller, true, by);
  }

  static Roller map(ResultSet row) throws SQLException {
    return new Roller(
        row.getString("name"),
        row.getDouble("diameter_mm"),
        row.getDouble("diameter_uncertainty_mm"),
        Face.valueOf(row.getString("side")),
        row.getInt("driven") == 1);
  }
}
