package org.chordlog.store.sql;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.Incident;
import org.chordlog.store.Incidents;

record SqlIncidents(Database database) implements Incidents {
  @Override
  public Incident add(Incident incident) {
    long id =
        database.write(
            connection ->
                Sql.insert(
                    connection,
                    "INSERT INTO incident (station, kind, from_micros, to_micros, lost, detail)"
                        + " VALUES (?, ?, ?, ?, ?, ?)",
                    incident.station(),
                    incident.kind().name(),
                    incident.fromMicros(),
                    incident.toMicros(),
                    incident.count(),
                    incident.detail()));
    return new Incident(
        id,
        incident.station(),
        incident.kind(),
        incident.fromMicros(),
        incident.toMicros(),
        incident.count(),
        incident.detail());
  }

  @Override
  public List<Incident> ofStation(String station, long beforeId, int limit) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT * FROM incident WHERE station = ? AND id < ? ORDER BY id DESC LIMIT ?",
                SqlIncidents::map,
                station,
                beforeId,
                limit));
  }

  private static Incident map(ResultSet row) throws SQLException {
    return new Incident(
        row.getLong("id"),
        row.getString("station"),
        Incident.Kind.valueOf(row.getString("kind")),
        row.getLong("from_micros"),
        row.getLong("to_micros"),
        row.getLong("lost"),
        row.getString("detail"));
  }
}
