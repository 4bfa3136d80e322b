package org.chordlog.forward;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.SealTip;

/**
 * What arrived, as the plant's database has it: the only authority on it. A row is written with the
 * batches of five minutes of a connection, in the same commits. The link's thread.
 */
record Ledger(Connection connection, String edge) {
  private static final String ROW =
      "SELECT incarnation, last_reading_id, last_revision, feed_mark, seal_seq, seal_hash"
          + " FROM plant.batch WHERE edge_id = ?::uuid";
  private static final String ADD_TO_NEWEST =
      "UPDATE plant.batch SET last_reading_id = ?, last_revision = ?, feed_mark = ?, seal_seq = ?,"
          + " seal_hash = ?, rows = rows + ?, batches = batches + 1,"
          + " received_micros = plant.now_micros()"
          + " WHERE edge_id = ?::uuid AND incarnation = ? AND number = (SELECT max(number)"
          + " FROM plant.batch WHERE edge_id = ?::uuid AND incarnation = ?)"
          + " AND begun_micros > plant.now_micros() - 300000000";
  private static final String BEGIN =
      "INSERT INTO plant.batch (last_reading_id, last_revision, feed_mark, seal_seq, seal_hash,"
          + " rows, batches, received_micros, begun_micros, edge_id, incarnation, number)"
          + " SELECT ?, ?, ?, ?, ?, ?, 1, plant.now_micros(), plant.now_micros(), ?::uuid, ?,"
          + " (SELECT coalesce(max(number), 0) + 1 FROM plant.batch WHERE edge_id = ?::uuid"
          + " AND incarnation = ?)";

  /** A place in the feed, and what tells the history up to it from others. */
  record Row(int incarnation, FeedPlace place, long mark, long sealSeq, String sealHash) {
    static Row of(ResultSet row) throws SQLException {
      return new Row(
          row.getInt(1),
          new FeedPlace(row.getLong(3), row.getLong(2)),
          row.getLong(4),
          row.getLong(5),
          row.getString(6));
    }
  }

  /** Of that incarnation. */
  Optional<Row> newest(int incarnation) throws SQLException {
    List<Row> found =
        rows(ROW + " AND incarnation = ? ORDER BY number DESC LIMIT 1", edge, incarnation);
    return found.stream().findFirst();
  }

  /** The newest row of a history that has entry {@code seq} at most, below a row; newest first. */
  List<Row> older(int incarnation, long mostSeq, int limit) throws SQLException {
    return rows(
        ROW + " AND incarnation = ? AND seal_seq <= ? ORDER BY number DESC LIMIT ?",
        edge,
        incarnation,
        mostSeq,
        limit);
  }

  private List<Row> rows(String sql, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, arguments[i]);
      }
      List<Row> found = new ArrayList<>();
      try (ResultSet all = statement.executeQuery()) {
        while (all.next()) {
          found.add(Row.of(all));
        }
      }
      return found;
    }
  }

  /** Within the transaction of the page's rows; each connection begins a row of its own. */
  void add(int incarnation, FeedPage page, boolean first) throws SQLException {
    if (first || write(ADD_TO_NEWEST, incarnation, page) == 0) {
      int unused = write(BEGIN, incarnation, page);
    }
  }

  private int write(String sql, int incarnation, FeedPage page) throws SQLException {
    SealTip tip = page.tip();
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      statement.setLong(1, page.to().readingId());
      statement.setLong(2, page.to().revision());
      statement.setLong(3, page.mark());
      statement.setLong(4, tip.seq());
      statement.setString(5, tip.hash());
      statement.setLong(6, page.count());
      statement.setString(7, edge);
      statement.setInt(8, incarnation);
      statement.setString(9, edge);
      statement.setInt(10, incarnation);
      return statement.executeUpdate();
    }
  }
}
