package org.chordlog.forward;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.chordlog.store.FeedTable;
import org.chordlog.store.sql.Sql;

/**
 * The rows of every table that is delivered, in the order of their keys: how many, and a sum of 64
 * bits of their values (FNV-1a), a double by its bits.
 */
record TableRows(long count, long sum) {
  private static final long FNV_BASIS = 0xcbf29ce484222325L;
  private static final long FNV_PRIME = 0x100000001b3L;

  /** Of the file of an edge. */
  static Map<FeedTable, TableRows> ofEdge(Path database) throws SQLException {
    try (Connection sqlite = DriverManager.getConnection("jdbc:sqlite:" + database)) {
      return all(sqlite, "");
    }
  }

  /** How many rows the file of an edge has of all of them. */
  static long countOfEdge(Path database) throws SQLException {
    try (Connection sqlite = DriverManager.getConnection("jdbc:sqlite:" + database)) {
      long count = 0;
      for (FeedTable each : FeedTable.values()) {
        count += Sql.number(sqlite, "SELECT count(*) FROM " + each.table());
      }
      return count;
    }
  }

  /** Of what the plant shows of an edge. */
  static Map<FeedTable, TableRows> ofPlant(Connection plant, String edge) throws SQLException {
    try (Statement statement = plant.createStatement()) {
      statement.execute("SELECT set_config('chordlog.edge', '" + edge + "', false)");
    }
    return all(plant, "edge.");
  }

  private static Map<FeedTable, TableRows> all(Connection from, String schema) throws SQLException {
    Map<FeedTable, TableRows> all = new EnumMap<>(FeedTable.class);
    from.setAutoCommit(false);
    for (FeedTable each : FeedTable.values()) {
      all.put(each, of(from, schema, each));
    }
    from.setAutoCommit(true);
    return all;
  }

  private static TableRows of(Connection from, String schema, FeedTable table) throws SQLException {
    String sql =
        "SELECT * FROM %s%s ORDER BY %s"
            .formatted(schema, table.table(), String.join(", ", table.key()));
    long sum = FNV_BASIS;
    long count = 0;
    try (Statement statement = from.createStatement()) {
      statement.setFetchSize(5_000);
      try (ResultSet rows = statement.executeQuery(sql)) {
        List<Integer> columns = byName(rows);
        while (rows.next()) {
          count++;
          for (int column : columns) {
            sum = added(sum, bytes(rows.getObject(column)));
          }
        }
      }
    }
    return new TableRows(count, sum);
  }

  private static long added(long sum, byte[] bytes) {
    long added = sum;
    for (byte each : bytes) {
      added = (added ^ (each & 0xff)) * FNV_PRIME;
    }
    return added;
  }

  private static List<Integer> byName(ResultSet rows) throws SQLException {
    Map<String, Integer> names = new java.util.TreeMap<>();
    for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
      names.put(rows.getMetaData().getColumnName(i), i);
    }
    return new ArrayList<>(names.values());
  }

  private static byte[] bytes(Object value) {
    if (value instanceof Double number) {
      return ByteBuffer.allocate(9)
          .put((byte) 'r')
          .putLong(Double.doubleToLongBits(number))
          .array();
    }
    if (value instanceof Number number) {
      return ByteBuffer.allocate(9).put((byte) 'i').putLong(number.longValue()).array();
    }
    byte[] body =
        value instanceof byte[] raw ? raw : String.valueOf(value).getBytes(StandardCharsets.UTF_8);
    return ByteBuffer.allocate(5 + body.length)
        .put((byte) (value == null ? 'n' : 't'))
        .putInt(body.length)
        .put(body)
        .array();
  }

  /** "job: 3 rows", for a message. */
  static String text(Map<FeedTable, TableRows> rows) {
    return rows.entrySet().stream()
        .map(each -> each.getKey().table() + " " + each.getValue())
        .collect(Collectors.joining("\n"));
  }
}
