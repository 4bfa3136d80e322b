package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Change;
import org.chordlog.measure.Face;
import org.chordlog.measure.Master;
import org.chordlog.store.json.StoredJson;

/** Masters as rows; who added one, when and why is in the record of changes. */
final class Masters {
  private Masters() {}

  static Master insert(Connection connection, Master master, String by, String why)
      throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO master (name, face, radius_mm, expanded_uncertainty_mm, check_limit_mm)"
                + " VALUES (?, ?, ?, ?, ?)",
            master.name(),
            master.face().name(),
            master.radiusMm(),
            master.expandedUncertaintyMm(),
            master.checkLimitMm());
    Master stored = required(connection, id);
    SqlChanges.insert(
        connection,
        new Change(0, Now.micros(), by, "master " + stored.name(), "", StoredJson.of(stored), why));
    return stored;
  }

  static Master required(Connection connection, long id) throws SQLException {
    return Sql.first(connection, "SELECT * FROM master WHERE id = ?", Masters::map, id)
        .orElseThrow(
            () -> new BadInput("masterId", id, "does not exist", "the number of a master"));
  }

  static Master map(ResultSet row) throws SQLException {
    return new Master(
        row.getLong("id"),
        row.getString("name"),
        Face.valueOf(row.getString("face")),
        row.getDouble("radius_mm"),
        row.getDouble("expanded_uncertainty_mm"),
        Sql.nullableDouble(row, "check_limit_mm"));
  }
}
