package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Roller;
import org.chordlog.measure.RollerScale;
import org.chordlog.measure.RollerScale.Gain;
import org.chordlog.measure.RollerScale.Motion;
import org.chordlog.measure.RollerScale.Tighter;
import org.chordlog.store.Machines;
import org.jspecify.annotations.Nullable;

record SqlMachines(Database database) implements Machines {
  private static final String SELECT = "SELECT * FROM roller_scale ";

  @Override
  public RollerScale add(RollerScale scale) {
    return database.write(connection -> insert(connection, scale));
  }

  private static RollerScale insert(Connection connection, RollerScale scale) throws SQLException {
    Motion motion = scale.motion();
    Gain gain = scale.gain();
    long id =
        Sql.insert(
            connection,
            "INSERT INTO roller_scale (machine, name, unit, tighter, step, lost_motion,"
                + " move_uncertainty, gain_per_mm, gain_uncertainty_per_mm, at_micros, made_by)"
                + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            scale.machine(),
            scale.name(),
            scale.unit(),
            motion.tighter().name(),
            motion.step(),
            motion.lostMotion(),
            motion.moveUncertainty(),
            gain == null ? null : gain.perMmPerUnit(),
            gain == null ? null : gain.standardUncertainty(),
            scale.atMicros(),
            scale.by());
    return Sql.first(connection, SELECT + "WHERE id = ?", SqlMachines::map, id).orElseThrow();
  }

  @Override
  public void add(String machine, Roller roller, Recorded by) {
    database.write(connection -> RollerRow.insert(connection, machine, roller, false, by));
  }

  @Override
  public void removeRoller(String machine, String name, Recorded by) {
    database.write(connection -> RollerRow.remove(connection, machine, name, by));
  }

  @Override
  public List<Roller> rollers(String machine) {
    return database.read(
        connection -> Sql.list(connection, RollerRow.IN_FORCE, RollerRow::map, machine));
  }

  @Override
  public List<RollerScale> scales(String machine) {
    return list(
        "WHERE id IN (SELECT max(id) FROM roller_scale WHERE machine = ? GROUP BY name)"
            + " ORDER BY name",
        machine);
  }

  @Override
  public List<RollerScale> scaleHistory(String machine) {
    return list("WHERE machine = ? ORDER BY id", machine);
  }

  private List<RollerScale> list(String where, String machine) {
    return database.read(
        connection -> Sql.list(connection, SELECT + where, SqlMachines::map, machine));
  }

  private static RollerScale map(ResultSet row) throws SQLException {
    return new RollerScale(
        row.getLong("id"),
        row.getString("machine"),
        row.getString("name"),
        row.getString("unit"),
        motion(row),
        gain(row),
        new Recorded(row.getLong("at_micros"), row.getString("made_by")));
  }

  private static Motion motion(ResultSet row) throws SQLException {
    return new Motion(
        Tighter.valueOf(row.getString("tighter")),
        Sql.nullableDouble(row, "step"),
        Sql.nullableDouble(row, "lost_motion"),
        Sql.nullableDouble(row, "move_uncertainty"));
  }

  private static @Nullable Gain gain(ResultSet row) throws SQLException {
    Double perMm = Sql.nullableDouble(row, "gain_per_mm");
    Double uncertainty = Sql.nullableDouble(row, "gain_uncertainty_per_mm");
    return perMm == null || uncertainty == null ? null : new Gain(perMm, uncertainty);
  }
}
