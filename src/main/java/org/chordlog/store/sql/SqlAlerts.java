package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Stale;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.store.Alerts;
import org.jspecify.annotations.Nullable;

record SqlAlerts(Database database) implements Alerts {
  private static final String OF_KEY = "kind = ? AND %1$sabout = ? AND %1$ssubject = ?";

  @Override
  public AlertEvent add(AlertEvent event) {
    return database.write(connection -> insert(connection, event));
  }

  @Override
  public List<AlertEvent> add(List<AlertEvent> events, Map<String, Long> cursors) {
    return database.write(
        connection -> {
          List<AlertEvent> kept = new ArrayList<>();
          for (AlertEvent each : events) {
            kept.add(insert(connection, each));
          }
          for (Map.Entry<String, Long> each : cursors.entrySet()) {
            moveCursor(connection, each.getKey(), each.getValue());
          }
          return kept;
        });
  }

  private static AlertEvent insert(Connection connection, AlertEvent event) throws SQLException {
    Optional<AlertEvent> before = stored(connection, event.key());
    if (before.isPresent()) {
      return before.get();
    }
    Alert alert = event.alert();
    AlertEvent kept =
        AlertRow.insert(connection, withAlert(event, alert.withId(place(connection, alert))));
    int unused =
        Sql.update(
            connection,
            "UPDATE alert SET state = ?, last_event_id = ? WHERE id = ?",
            kept.to().name(),
            kept.id(),
            kept.alert().id());
    return kept;
  }

  private static AlertEvent withAlert(AlertEvent event, Alert alert) {
    return new AlertEvent(
        0, event.what(), event.from(), alert, event.recorded(), event.note(), event.key());
  }

  private static Optional<AlertEvent> stored(Connection connection, String key)
      throws SQLException {
    return key.isEmpty()
        ? Optional.empty()
        : Sql.first(connection, AlertRow.EVENTS + "WHERE event_key = ?", AlertRow::event, key);
  }

  /** The alert's id, of a new one too. */
  private static long place(Connection connection, Alert alert) throws SQLException {
    if (alert.id() == 0) {
      return insert(connection, alert);
    }
    Alert stored = find(connection, alert.id()).orElseThrow(() -> unknown(alert.id()));
    if (!stored.key().equals(alert.key()) || stored.revision() + 1 != alert.revision()) {
      throw new Stale("The alert was changed meanwhile.");
    }
    return alert.id();
  }

  private static long insert(Connection connection, Alert alert) throws SQLException {
    if (alert.revision() != 1 || open(connection, alert.key()).isPresent()) {
      throw new Stale("An alert of the same kind is open already.");
    }
    return Sql.insert(
        connection,
        "INSERT INTO alert (kind, about, subject, state, last_event_id) VALUES (?, ?, ?, ?, 0)",
        alert.kind().name(),
        alert.subject().type().name(),
        alert.subject().name(),
        alert.state().name());
  }

  private static BadInput unknown(long id) {
    return new BadInput("alert", id, "does not exist", "the number of an alert");
  }

  @Override
  public List<Alert> open() {
    return alerts("WHERE a.state <> 'NORMAL' ORDER BY a.id");
  }

  @Override
  public int waiting() {
    return (int)
        number(
            "SELECT count(*) FROM alert WHERE state IN ('UNACKNOWLEDGED',"
                + " 'RETURNED_UNACKNOWLEDGED') AND state <> 'NORMAL'");
  }

  @Override
  public Optional<Alert> open(AlertKey key) {
    return database.read(connection -> open(connection, key));
  }

  private static Optional<Alert> open(Connection connection, AlertKey key) throws SQLException {
    return Sql.first(
        connection,
        AlertRow.ALERTS + "WHERE a." + OF_KEY.formatted("a.") + " AND a.state <> 'NORMAL'",
        AlertRow::alert,
        of(key));
  }

  @Override
  public Optional<Alert> find(long id) {
    return database.read(connection -> find(connection, id));
  }

  private static Optional<Alert> find(Connection connection, long id) throws SQLException {
    return Sql.first(connection, AlertRow.ALERTS + "WHERE a.id = ?", AlertRow::alert, id);
  }

  @Override
  public List<Alert> list(long beforeId, int limit) {
    return alerts("WHERE a.id < ? ORDER BY a.id DESC LIMIT ?", beforeId, limit);
  }

  @Override
  public List<Alert> list(AlertKey key, long beforeId, int limit) {
    return alerts(
        "WHERE a." + OF_KEY.formatted("a.") + " AND a.id < ? ORDER BY a.id DESC LIMIT ?",
        of(key, beforeId, limit));
  }

  private List<Alert> alerts(String where, @Nullable Object... arguments) {
    return database.read(
        connection -> Sql.list(connection, AlertRow.ALERTS + where, AlertRow::alert, arguments));
  }

  @Override
  public List<AlertEvent> events(long alertId) {
    return events("WHERE alert_id = ? ORDER BY id", alertId);
  }

  @Override
  public List<AlertEvent> events(AlertKey key, long sinceMicros) {
    return events(
        "WHERE " + OF_KEY.formatted("") + " AND at_micros >= ? ORDER BY id", of(key, sinceMicros));
  }

  @Override
  public List<AlertEvent> eventsAfter(long afterId, int limit) {
    return events("WHERE id > ? ORDER BY id LIMIT ?", afterId, limit);
  }

  private List<AlertEvent> events(String where, @Nullable Object... arguments) {
    return database.read(
        connection -> Sql.list(connection, AlertRow.EVENTS + where, AlertRow::event, arguments));
  }

  @Override
  public long lastEventId() {
    return number("SELECT max(id) FROM alert_event");
  }

  @Override
  public long raisedSince(long sinceMicros) {
    return number(
        "SELECT count(*) FROM alert_event WHERE what = 'RAISED' AND at_micros >= ?", sinceMicros);
  }

  @Override
  public long cursor(String name) {
    return number("SELECT id FROM alert_cursor WHERE name = ?", name);
  }

  private long number(String sql, @Nullable Object... arguments) {
    return database.read(connection -> Sql.number(connection, sql, arguments));
  }

  @Override
  public void moveCursor(String name, long id) {
    database.write(connection -> moveCursor(connection, name, id));
  }

  /** Within another commit. */
  static int moveCursor(Connection connection, String name, long id) throws SQLException {
    return Sql.put(
        connection,
        "UPDATE alert_cursor SET id = ? WHERE name = ?",
        "INSERT INTO alert_cursor (id, name) VALUES (?, ?)",
        id,
        name);
  }

  private static Object[] of(AlertKey key, Object... more) {
    Object[] all = new Object[3 + more.length];
    all[0] = key.kind().name();
    all[1] = key.subject().type().name();
    all[2] = key.subject().name();
    System.arraycopy(more, 0, all, 3, more.length);
    return all;
  }
}
