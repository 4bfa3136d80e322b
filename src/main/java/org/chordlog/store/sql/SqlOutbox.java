package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.chordlog.store.Outbox;

record SqlOutbox(Database database) implements Outbox {
  private static final String UNTOLD =
      "SELECT DISTINCT m.alert_id, d.* FROM alert_delivery d"
          + " JOIN alert_message m ON m.delivery_id = d.id"
          + " WHERE d.state IN ('WAITING', 'FAILED') AND (d.state = 'FAILED' OR d.attempts > 0)"
          + " AND m.topic IN ('RAISED', 'EVENT') ORDER BY d.id DESC LIMIT ?";

  /** When it went out, or will where it is on its way. */
  private static final String SENT =
      "SELECT CASE state WHEN 'DELIVERED' THEN progress_micros ELSE made_micros END AS sent"
          + " FROM alert_delivery WHERE channel = ? AND recipient = ? AND state <> 'FAILED'"
          + " AND progress_micros >= ? ORDER BY sent";

  @Override
  public int add(List<Message> messages) {
    return database.write(
        connection -> {
          int added = 0;
          for (Message each : messages) {
            added += OutboxRow.insert(connection, each);
          }
          return added;
        });
  }

  @Override
  public List<Recipient> waiting(Channel channel) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                "SELECT DISTINCT channel, recipient FROM alert_message"
                    + " WHERE channel = ? AND delivery_id IS NULL ORDER BY recipient",
                OutboxRow::recipient,
                channel.name()));
  }

  @Override
  public List<Message> unsent(Recipient to, int limit) {
    return messages(
        "WHERE channel = ? AND recipient = ? AND delivery_id IS NULL ORDER BY id LIMIT ?",
        to.channel().name(),
        to.name(),
        limit);
  }

  private List<Message> messages(String where, Object... arguments) {
    return database.read(
        connection ->
            Sql.list(connection, OutboxRow.MESSAGES + where, OutboxRow::message, arguments));
  }

  @Override
  public Delivery deliver(Recipient to, List<Message> messages, long atMicros) {
    return database.write(
        connection -> {
          long id =
              Sql.insert(
                  connection,
                  "INSERT INTO alert_delivery (channel, recipient, made_micros, state, attempts,"
                      + " progress_micros, problem) VALUES (?, ?, ?, 'WAITING', 0, ?, '')",
                  to.channel().name(),
                  to.name(),
                  atMicros,
                  atMicros);
          for (Message each : messages) {
            OutboxRow.carry(connection, each, id);
          }
          return new Delivery(id, to, atMicros, new Progress(State.WAITING, 0, atMicros, ""));
        });
  }

  @Override
  public List<Message> messages(long deliveryId) {
    return messages("WHERE delivery_id = ? ORDER BY id", deliveryId);
  }

  @Override
  public List<Message> about(Topic topic, long number) {
    return messages("WHERE topic = ? AND number = ? ORDER BY id", topic.name(), number);
  }

  @Override
  public boolean failed(Topic topic, long number) {
    return exists(
        "SELECT count(*) FROM alert_message m JOIN alert_delivery d ON d.id = m.delivery_id"
            + " WHERE m.topic = ? AND m.number = ? AND d.state = 'FAILED'",
        topic.name(),
        number);
  }

  private boolean exists(String count, Object... arguments) {
    return database.read(connection -> Sql.number(connection, count, arguments)) > 0;
  }

  @Override
  public List<Delivery> due(Channel channel, long nowMicros, int limit) {
    return deliveries(
        "WHERE state = 'WAITING' AND channel = ? AND progress_micros <= ?"
            + " ORDER BY progress_micros, id LIMIT ?",
        channel.name(),
        nowMicros,
        limit);
  }

  private List<Delivery> deliveries(String where, Object... arguments) {
    return database.read(
        connection ->
            Sql.list(connection, OutboxRow.DELIVERIES + where, OutboxRow::delivery, arguments));
  }

  @Override
  public void note(long deliveryId, Progress progress) {
    int unused =
        database.write(
            connection ->
                Sql.update(
                    connection,
                    "UPDATE alert_delivery SET state = ?, attempts = ?, progress_micros = ?,"
                        + " problem = ? WHERE id = ?",
                    progress.state().name(),
                    progress.attempts(),
                    progress.atMicros(),
                    progress.problem(),
                    deliveryId));
  }

  @Override
  public List<Long> sent(Recipient to, long sinceMicros) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                SENT,
                row -> row.getLong(1),
                to.channel().name(),
                to.name(),
                sinceMicros));
  }

  @Override
  public boolean stuck(Recipient to) {
    return exists(
        "SELECT count(*) FROM alert_delivery WHERE channel = ? AND recipient = ?"
            + " AND state = 'WAITING' AND attempts > 0",
        to.channel().name(),
        to.name());
  }

  @Override
  public List<Delivery> newest(State state, long sinceMicros, int limit) {
    return deliveries(
        "WHERE state = ? AND made_micros >= ? ORDER BY id DESC LIMIT ?",
        state.name(),
        sinceMicros,
        limit);
  }

  @Override
  public List<Untold> untold(int limit) {
    return database.read(
        connection ->
            Sql.list(
                connection,
                UNTOLD,
                row -> new Untold(row.getLong("alert_id"), OutboxRow.delivery(row)),
                limit));
  }

  @Override
  public Counts counts() {
    return database.read(
        connection ->
            new Counts(
                Sql.number(
                    connection, "SELECT count(*) FROM alert_message WHERE delivery_id IS NULL"),
                count(connection, State.WAITING),
                count(connection, State.DELIVERED),
                count(connection, State.FAILED)));
  }

  private static long count(Connection connection, State state) throws SQLException {
    return Sql.number(
        connection, "SELECT count(*) FROM alert_delivery WHERE state = ?", state.name());
  }

  @Override
  public void forget(long beforeMicros) {
    String old = "state <> 'WAITING' AND progress_micros < ?";
    int unused =
        database.write(
            connection ->
                Sql.update(
                        connection,
                        "DELETE FROM alert_message WHERE delivery_id IN"
                            + " (SELECT id FROM alert_delivery WHERE "
                            + old
                            + ")",
                        beforeMicros)
                    + Sql.update(
                        connection, "DELETE FROM alert_delivery WHERE " + old, beforeMicros));
  }
}
