package org.chordlog.store.sqlite;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.FeedRow;
import org.chordlog.store.FeedRows;
import org.chordlog.store.FeedTable;
import org.chordlog.store.sql.Sql;
import org.jspecify.annotations.Nullable;

/** Reads one page of the feed within a transaction. */
final class FeedReader {
  private static final int CELL_BYTES = 10;

  private final Connection connection;
  private final int mostRows;
  private final long mostBytes;
  private final List<FeedRows> rows = new ArrayList<>();
  private long bytes;

  FeedReader(Connection connection, int mostRows, long mostBytes) {
    this.connection = connection;
    this.mostRows = mostRows;
    this.mostBytes = mostBytes;
  }

  FeedPage page(FeedPlace after) throws SQLException {
    Changed changed = changed(after.revision());
    for (FeedTable each : changed.tables()) {
      add(each, FeedSql.facts(each), after.revision(), changed.revision());
    }
    boolean readingsToo = changed.count() < mostRows && bytes < mostBytes;
    long reading =
        readingsToo ? readings(after.readingId(), mostRows - changed.count()) : after.readingId();
    FeedPlace to = new FeedPlace(changed.revision(), reading);
    return new FeedPage(
        to,
        rows,
        SqliteFeed.mark(connection, to.revision()).orElse(0L),
        SealEntry.newest(connection).tip(SealEntry.uuid(connection)),
        SqliteFeed.rest(connection, to));
  }

  /** The tables with changes in this page, its last change, and how many there are. */
  private record Changed(Set<FeedTable> tables, long revision, int count) {}

  private Changed changed(long after) throws SQLException {
    Set<FeedTable> tables = EnumSet.noneOf(FeedTable.class);
    long last = after;
    int count = 0;
    try (PreparedStatement page = Sql.prepare(connection, FeedSql.CHANGED, after, mostRows);
        ResultSet found = page.executeQuery()) {
      while (found.next()) {
        FeedTable.named(found.getString(1)).ifPresent(tables::add);
        last = Math.max(last, found.getLong(2));
        count += found.getInt(3);
      }
    }
    return new Changed(tables, last, count);
  }

  private void add(FeedTable of, String sql, Object... arguments) throws SQLException {
    try (PreparedStatement all = Sql.prepare(connection, sql, arguments);
        ResultSet found = all.executeQuery()) {
      List<FeedRow> read = new ArrayList<>();
      while (found.next()) {
        read.add(row(found));
      }
      if (!read.isEmpty()) {
        rows.add(new FeedRows(of, columns(found.getMetaData()), read));
      }
    }
  }

  /** The first column is the number of the change. */
  private FeedRow row(ResultSet found) throws SQLException {
    @Nullable Object[] values = new @Nullable Object[found.getMetaData().getColumnCount() - 1];
    for (int i = 0; i < values.length; i++) {
      values[i] = cell(found.getObject(i + 2));
      bytes += bytes(values[i]);
    }
    return FeedRow.of(found.getLong(1), values);
  }

  private static @Nullable Object cell(@Nullable Object found) {
    return found instanceof Integer number ? (Object) number.longValue() : found;
  }

  private static long bytes(@Nullable Object value) {
    if (value instanceof byte[] packed) {
      return 2L * packed.length;
    }
    return value instanceof String text ? text.length() + 1L : CELL_BYTES;
  }

  private static List<String> columns(ResultSetMetaData of) throws SQLException {
    List<String> names = new ArrayList<>();
    for (int i = 2; i <= of.getColumnCount(); i++) {
      names.add(of.getColumnName(i));
    }
    return names;
  }

  /** Adds readings until the page is full; the id of the last one. */
  private long readings(long after, int most) throws SQLException {
    add(FeedTable.READING, FeedSql.READINGS, after, most);
    if (rows.isEmpty() || rows.get(rows.size() - 1).table() != FeedTable.READING) {
      return after;
    }
    FeedRows read = rows.remove(rows.size() - 1);
    long last = profiles(after, id(read.rows().get(read.rows().size() - 1)));
    List<FeedRow> whole = read.rows().stream().filter(row -> id(row) <= last).toList();
    rows.add(new FeedRows(read.table(), read.columns(), whole));
    return last;
  }

  private static long id(FeedRow row) {
    return row.values().get(0) instanceof Number id ? id.longValue() : 0;
  }

  /** Adds profiles of these readings until they are too large; the last reading with all of its. */
  private long profiles(long after, long newest) throws SQLException {
    bytes = 0;
    long last = newest;
    List<FeedRow> read = new ArrayList<>();
    try (PreparedStatement all = Sql.prepare(connection, FeedSql.PROFILES, after, newest);
        ResultSet found = all.executeQuery()) {
      while (found.next()) {
        FeedRow next = row(found);
        if (bytes > mostBytes && !read.isEmpty() && id(read.get(read.size() - 1)) != id(next)) {
          last = id(next) - 1;
          break;
        }
        read.add(next);
      }
      if (!read.isEmpty()) {
        rows.add(new FeedRows(FeedTable.PROFILE, columns(found.getMetaData()), read));
      }
    }
    return last;
  }
}
