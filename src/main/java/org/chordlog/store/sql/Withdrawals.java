package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.EventWithdrawal;

/** Events taken back, as rows; append-only. */
record Withdrawals(Database database) {
  EventWithdrawal add(EventWithdrawal withdrawal) {
    long id = database.write(connection -> insert(connection, withdrawal));
    return new EventWithdrawal(
        id, withdrawal.eventId(), withdrawal.reason(), withdrawal.atMicros(), withdrawal.by());
  }

  static boolean takenBack(Connection connection, long event) throws SQLException {
    return Sql.number(connection, "SELECT count(*) FROM event_withdrawal WHERE event_id = ?", event)
        > 0;
  }

  static long insert(Connection connection, EventWithdrawal withdrawal) throws SQLException {
    long event = withdrawal.eventId();
    if (Sql.number(connection, "SELECT count(*) FROM job_event WHERE id = ?", event) == 0) {
      throw new BadInput("eventId", event, "does not exist", "the number of an event");
    }
    if (takenBack(connection, event)) {
      throw new BadInput("eventId", event, "is already taken back", "an event that still counts");
    }
    return Sql.insert(
        connection,
        "INSERT INTO event_withdrawal (event_id, reason, at_micros, made_by) VALUES (?, ?, ?, ?)",
        event,
        withdrawal.reason(),
        withdrawal.atMicros(),
        withdrawal.by());
  }

  /** Withdrawals of the events that fulfil the condition. */
  List<EventWithdrawal> list(String ofEvents, Object... arguments) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT w.* FROM job_event e JOIN event_withdrawal w ON w.event_id = e.id WHERE "
                    + ofEvents
                    + " ORDER BY w.id",
                Withdrawals::map,
                arguments));
  }

  private static EventWithdrawal map(ResultSet row) throws SQLException {
    return new EventWithdrawal(
        row.getLong("id"),
        row.getLong("event_id"),
        row.getString("reason"),
        row.getLong("at_micros"),
        row.getString("made_by"));
  }
}
