package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertKind;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;
import org.chordlog.measure.alert.AlertSubject;
import org.chordlog.store.json.StoredJson;

/** An event of an alert, with the alert as it was after it, as a row. */
final class AlertRow {
  static final String EVENTS = "SELECT * FROM alert_event ";

  /** Alerts as they are now. */
  static final String ALERTS =
      "SELECT e.* FROM alert a JOIN alert_event e ON e.id = a.last_event_id ";

  private static final String COLUMNS =
      "alert_id, revision, kind, about, subject, what, from_state, state, present, unsteady,"
          + " since_micros, changed_micros, shelved_until_micros, figures, detail,"
          + " first_reading_id, last_reading_id, assigned_to, at_micros, made_by, note, event_key";

  private static final String INSERT =
      "INSERT INTO alert_event (" + COLUMNS + ") VALUES (" + Sql.places(22) + ") RETURNING *";

  private AlertRow() {}

  /** Of an alert that has its id; as it is stored. */
  static AlertEvent insert(Connection connection, AlertEvent event) throws SQLException {
    Alert alert = event.alert();
    AlertStatus status = alert.status();
    AlertEvidence evidence = alert.evidence();
    return Sql.first(
            connection,
            INSERT,
            AlertRow::event,
            alert.id(),
            alert.revision(),
            alert.kind().name(),
            alert.subject().type().name(),
            alert.subject().name(),
            event.what().name(),
            event.from().name(),
            status.state().name(),
            status.present(),
            status.unsteady(),
            status.sinceMicros(),
            status.changedMicros(),
            status.shelvedUntilMicros(),
            StoredJson.of(evidence.figures()),
            evidence.detail(),
            evidence.firstReadingId(),
            evidence.lastReadingId(),
            alert.assignedTo(),
            event.atMicros(),
            event.by(),
            event.note(),
            event.key())
        .orElseThrow();
  }

  static AlertEvent event(ResultSet row) throws SQLException {
    return new AlertEvent(
        row.getLong("id"),
        AlertEvent.What.valueOf(row.getString("what")),
        AlertState.valueOf(row.getString("from_state")),
        alert(row),
        new Recorded(row.getLong("at_micros"), row.getString("made_by")),
        row.getString("note"),
        row.getString("event_key"));
  }

  static Alert alert(ResultSet row) throws SQLException {
    return new Alert(
        row.getLong("alert_id"),
        row.getInt("revision"),
        key(row),
        status(row),
        evidence(row),
        row.getString("assigned_to"));
  }

  private static AlertKey key(ResultSet row) throws SQLException {
    AlertSubject.Type about = AlertSubject.Type.valueOf(row.getString("about"));
    return new AlertKey(
        AlertKind.valueOf(row.getString("kind")),
        new AlertSubject(about, row.getString("subject")));
  }

  private static AlertStatus status(ResultSet row) throws SQLException {
    return new AlertStatus(
        AlertState.valueOf(row.getString("state")),
        row.getBoolean("present"),
        row.getLong("since_micros"),
        row.getLong("changed_micros"),
        row.getLong("shelved_until_micros"),
        row.getBoolean("unsteady"));
  }

  private static AlertEvidence evidence(ResultSet row) throws SQLException {
    return new AlertEvidence(
        StoredJson.figures(row.getString("figures")),
        row.getString("detail"),
        row.getLong("first_reading_id"),
        row.getLong("last_reading_id"));
  }
}
