package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Change;
import org.chordlog.measure.FootKind;
import org.chordlog.measure.Stale;
import org.chordlog.store.json.StoredJson;
import org.jspecify.annotations.Nullable;

/** Bridges and where they are mounted; a changed bridge is a new row. */
final class Bridges {
  private Bridges() {}

  static Bridge insert(Connection connection, Bridge bridge, String by) throws SQLException {
    Bridge kept = insert(connection, bridge);
    record(connection, by, kept, "", "new");
    return kept;
  }

  static Bridge replace(Connection connection, long oldId, Bridge bridge, String by, String why)
      throws SQLException {
    Bridge old = required(connection, oldId);
    Bridge kept = insert(connection, bridge);
    String update = "UPDATE bridge SET replaced_by = ? WHERE id = ? AND replaced_by IS NULL";
    if (Sql.update(connection, update, kept.id(), oldId) == 0) {
      throw new Stale("Bridge " + old.name() + " was changed meanwhile. Look at what it is now.");
    }
    record(connection, by, kept, StoredJson.of(old), why);
    return kept;
  }

  static long mount(Connection connection, String station, long bridgeId, long atMicros, String by)
      throws SQLException {
    return Sql.insert(
        connection,
        "INSERT INTO mount (station, bridge_id, at_micros, made_by) VALUES (?, ?, ?, ?)",
        station,
        required(connection, bridgeId).id(),
        atMicros,
        by);
  }

  static Bridge required(Connection connection, long id) throws SQLException {
    return Sql.first(connection, "SELECT * FROM bridge WHERE id = ?", Bridges::map, id)
        .orElseThrow(
            () -> new BadInput("bridgeId", id, "does not exist", "the number of a bridge"));
  }

  private static Bridge insert(Connection connection, Bridge bridge) throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO bridge (name, span_mm, span_uncertainty_mm, foot_radius_mm,"
                + " foot_radius_uncertainty_mm, skew_limit_degrees, foot_kind)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?)",
            bridge.name(),
            bridge.spanMm(),
            bridge.spanUncertaintyMm(),
            bridge.footRadiusMm(),
            bridge.footRadiusUncertaintyMm(),
            bridge.skewLimitDegrees(),
            name(bridge.footKind()));
    return required(connection, id);
  }

  private static void record(Connection connection, String by, Bridge kept, String from, String why)
      throws SQLException {
    SqlChanges.insert(
        connection,
        new Change(0, Now.micros(), by, "bridge " + kept.name(), from, StoredJson.of(kept), why));
  }

  static Bridge map(ResultSet row) throws SQLException {
    return new Bridge(
        row.getLong("id"),
        row.getString("name"),
        new Bridge.Span(row.getDouble("span_mm"), row.getDouble("span_uncertainty_mm")),
        new Bridge.Feet(
            row.getDouble("foot_radius_mm"),
            row.getDouble("foot_radius_uncertainty_mm"),
            footKind(row.getString("foot_kind"))),
        row.getDouble("skew_limit_degrees"));
  }

  private static @Nullable String name(@Nullable FootKind kind) {
    return kind == null ? null : kind.name();
  }

  private static @Nullable FootKind footKind(@Nullable String name) {
    return name == null ? null : FootKind.valueOf(name);
  }
}
