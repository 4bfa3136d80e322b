package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.chordlog.store.Outbox.Channel;
import org.chordlog.store.Outbox.Delivery;
import org.chordlog.store.Outbox.Message;
import org.chordlog.store.Outbox.Progress;
import org.chordlog.store.Outbox.Recipient;
import org.chordlog.store.Outbox.State;
import org.chordlog.store.Outbox.Topic;

/** Messages about alerts and their deliveries as rows. */
final class OutboxRow {
  static final String MESSAGES = "SELECT * FROM alert_message ";
  static final String DELIVERIES = "SELECT * FROM alert_delivery ";

  private OutboxRow() {}

  /** How many rows that makes: none where the message is stored already. */
  static int insert(Connection connection, Message message) throws SQLException {
    return Sql.update(
        connection,
        "INSERT INTO alert_message (channel, recipient, topic, number, alert_id,"
            + " at_micros) VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING",
        message.to().channel().name(),
        message.to().name(),
        message.topic().name(),
        message.number(),
        message.alertId(),
        message.atMicros());
  }

  /** Notes that the delivery carries the message, unless another does. */
  static void carry(Connection connection, Message message, long delivery) throws SQLException {
    int unused =
        Sql.update(
            connection,
            "UPDATE alert_message SET delivery_id = ? WHERE id = ? AND delivery_id IS NULL",
            delivery,
            message.id());
  }

  static Recipient recipient(ResultSet row) throws SQLException {
    return new Recipient(Channel.valueOf(row.getString("channel")), row.getString("recipient"));
  }

  static Message message(ResultSet row) throws SQLException {
    return new Message(
        row.getLong("id"),
        recipient(row),
        Topic.valueOf(row.getString("topic")),
        row.getLong("number"),
        row.getLong("alert_id"),
        row.getLong("at_micros"));
  }

  static Delivery delivery(ResultSet row) throws SQLException {
    return new Delivery(
        row.getLong("id"),
        recipient(row),
        row.getLong("made_micros"),
        new Progress(
            State.valueOf(row.getString("state")),
            row.getInt("attempts"),
            row.getLong("progress_micros"),
            row.getString("problem")));
  }
}
