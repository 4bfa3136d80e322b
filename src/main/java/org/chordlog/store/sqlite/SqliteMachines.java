package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.MachineScale;
import org.chordlog.store.Machines;

record SqliteMachines(Database database) implements Machines {
  private static final String SELECT = "SELECT * FROM machine_scale ";

  @Override
  public MachineScale add(MachineScale scale) {
    return database.write(connection -> insert(connection, scale));
  }

  private static MachineScale insert(Connection connection, MachineScale scale)
      throws SQLException {
    long id =
        Sql.insert(
            connection,
            "INSERT INTO machine_scale (machine, name, unit, step, tighter, lost_motion,"
                + " at_micros, made_by) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
            scale.machine(),
            scale.name(),
            scale.unit(),
            scale.step(),
            scale.tighter().name(),
            scale.lostMotion(),
            scale.atMicros(),
            scale.by());
    return Sql.first(connection, SELECT + "WHERE id = ?", SqliteMachines::map, id).orElseThrow();
  }

  @Override
  public List<MachineScale> scales(String machine) {
    return list(
        "WHERE id IN (SELECT max(id) FROM machine_scale WHERE machine = ? GROUP BY name)"
            + " ORDER BY name",
        machine);
  }

  @Override
  public List<MachineScale> scaleHistory(String machine) {
    return list("WHERE machine = ? ORDER BY id", machine);
  }

  private List<MachineScale> list(String where, String machine) {
    return database.read(
        connection -> Sql.list(connection, SELECT + where, SqliteMachines::map, machine));
  }

  private static MachineScale map(ResultSet row) throws SQLException {
    return new MachineScale(
        row.getLong("id"),
        row.getString("machine"),
        row.getString("name"),
        row.getString("unit"),
        row.getDouble("step"),
        MachineScale.Tighter.valueOf(row.getString("tighter")),
        Sql.nullableDouble(row, "lost_motion"),
        row.getLong("at_micros"),
        row.getString("made_by"));
  }
}
