package org.chordlog.store.sql;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.chordlog.store.DamagedRecordException;
import org.chordlog.store.UnreadableRecord;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads rows of which one may be damaged: that one is left out, remembered and logged once, and the
 * others are given. Any thread.
 */
public final class Unreadable {
  private static final int MOST = 100;
  private static final String LIMITED = "LIMIT ?";
  private static final String UNKNOWN = "No enum constant ";
  private static final Logger LOG = LoggerFactory.getLogger(Unreadable.class);
  private final Map<String, UnreadableRecord> found = new LinkedHashMap<>();

  /** A page of rows: how many there were, and what could be read of them. */
  private record Page<T>(int rows, List<T> readable) {}

  /** Kinds of records, with the column that names the job they belong to. */
  enum Kind {
    READING("job_id"),
    JOB("id"),
    EVENT("job_id");

    private final String jobColumn;

    Kind(String jobColumn) {
      this.jobColumn = jobColumn;
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public synchronized List<UnreadableRecord> found() {
    return List.copyOf(found.values());
  }

  /**
   * What can be read of that query, whose rows have a column {@code id}. Where it ends with a
   * limit, the last argument, further rows stand in for those left out, so that a short page is the
   * last.
   */
  <T> List<T> list(
      Connection connection,
      Kind kind,
      String sql,
      Sql.Mapper<T> mapper,
      @Nullable Object... arguments)
      throws SQLException {
    Page<T> page = page(connection, kind, sql, mapper, arguments);
    if (!sql.endsWith(LIMITED)) {
      return page.readable();
    }
    @Nullable Object[] asked = arguments.clone();
    int limit = ((Number) Objects.requireNonNull(asked[asked.length - 1])).intValue();
    for (int all = limit; page.rows() == all && page.readable().size() < limit; ) {
      all = limit + page.rows() - page.readable().size();
      asked[asked.length - 1] = all;
      page = page(connection, kind, sql, mapper, asked);
    }
    return page.readable();
  }

  private <T> Page<T> page(
      Connection connection,
      Kind kind,
      String sql,
      Sql.Mapper<T> mapper,
      @Nullable Object... arguments)
      throws SQLException {
    List<T> readable = new ArrayList<>();
    int count = 0;
    try (PreparedStatement statement = Sql.prepare(connection, sql, arguments);
        ResultSet rows = statement.executeQuery()) {
      while (rows.next()) {
        count++;
        try {
          readable.add(mapper.map(rows));
        } catch (RuntimeException e) {
          remember(kind, rows, e);
        }
      }
    }
    return new Page<>(count, readable);
  }

  /** As {@link #list}, of jobs of any query. */
  public <T> List<T> jobs(
      Connection connection, String sql, Sql.Mapper<T> mapper, @Nullable Object... arguments)
      throws SQLException {
    return list(connection, Kind.JOB, sql, mapper, arguments);
  }

  /** The one of that id; {@link DamagedRecordException} where it is there and can't be read. */
  <T> List<T> one(Connection connection, Kind kind, String sql, Sql.Mapper<T> mapper, long id)
      throws SQLException {
    Page<T> page = page(connection, kind, sql, mapper, id);
    if (page.rows() > page.readable().size()) {
      String key = kind.word() + " " + id;
      throw new DamagedRecordException(
          key + " is damaged and can't be read; restore a backup, or see 'chordlog audit'");
    }
    return page.readable();
  }

  /** As people read it: an unknown word without the class that does not know it. */
  static String why(RuntimeException e) {
    String said = String.valueOf(e.getMessage());
    return said.startsWith(UNKNOWN)
        ? said.substring(said.lastIndexOf('.') + 1) + " is unknown"
        : said;
  }

  private synchronized void remember(Kind kind, ResultSet row, RuntimeException e)
      throws SQLException {
    long id = row.getLong("id");
    UnreadableRecord record =
        new UnreadableRecord(kind.word(), id, row.getLong(kind.jobColumn), why(e));
    if (found.size() < MOST && found.put(kind.word() + " " + id, record) == null) {
      LOG.atError()
          .addKeyValue("what", kind.word())
          .addKeyValue("id", id)
          .setCause(e)
          .log("a damaged record is left out");
    }
  }
}
