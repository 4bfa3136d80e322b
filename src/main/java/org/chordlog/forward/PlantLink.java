package org.chordlog.forward;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.EnumMap;
import java.util.Map;
import java.util.function.Supplier;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.FeedRows;
import org.chordlog.store.FeedTable;
import org.chordlog.store.MeasuringPart;
import org.postgresql.PGConnection;

/**
 * A connection to the plant's database by which one edge delivers. After any exception its outcome
 * is open: it is closed, and the next one asks the ledger. One thread, but for {@link #abort}.
 */
final class PlantLink implements AutoCloseable {
  private final Connection connection;
  private final PlantSettings settings;
  private final Feed feed;
  private final Map<FeedTable, MergeSql> staged = new EnumMap<>(FeedTable.class);
  private int incarnation;
  private boolean first = true;

  PlantLink(Connection connection, PlantSettings settings, Feed feed) throws SQLException {
    this.connection = connection;
    this.settings = settings;
    this.feed = feed;
    connection.setAutoCommit(false);
  }

  private String edge() {
    return feed.edge().uuid();
  }

  /** Makes sure that nobody else delivers for this edge; where to go on. */
  FeedPlace hello(long nowMicros) throws SQLException {
    endWhereCutOff();
    lock();
    int atPlant = register();
    FeedPlace place = new Histories(connection, feed, nowMicros).goOn(atPlant);
    incarnation = feed.edge().incarnation();
    connection.commit();
    return place;
  }

  /**
   * The server ends its side of a connection of which nothing is heard any more, so that the next
   * one is not refused for it; an edge that is connected says something every few seconds.
   */
  private void endWhereCutOff() throws SQLException {
    try (PreparedStatement set =
        connection.prepareStatement("SELECT set_config('idle_session_timeout', '90s', false)")) {
      set.execute();
    }
    connection.commit();
  }

  /** Held by the connection: seen at once where two computers have the same database. */
  private void lock() throws SQLException {
    if (ask("SELECT pg_try_advisory_lock(hashtextextended(?, 0))::int", edge()) == 0) {
      throw new ForwardProblem.Refused(
          "another connection delivers for this database ("
              + edge()
              + "): where a copy of its folder runs on a second computer, stop one of the two; one"
              + " that was cut off ends by itself within two minutes");
    }
  }

  /** The incarnation that the plant knows. */
  private int register() throws SQLException {
    try (PreparedStatement call =
        connection.prepareStatement("SELECT plant.register(?::uuid, ?, ?)")) {
      call.setString(1, edge());
      call.setInt(2, feed.schemaVersion());
      call.setString(3, MeasuringPart.version());
      call.execute();
    }
    use();
    requireName();
    return (int) ask("SELECT incarnation FROM plant.edge WHERE edge_id = ?::uuid", edge());
  }

  /** The views show the rows of this edge from now on. */
  private void use() throws SQLException {
    try (PreparedStatement set =
        connection.prepareStatement("SELECT set_config('chordlog.edge', ?, false)")) {
      set.setString(1, edge());
      set.execute();
    }
  }

  /** Else a file of settings that was copied from another computer would not be noticed. */
  private void requireName() throws SQLException {
    try (PreparedStatement ask =
        connection.prepareStatement("SELECT name FROM plant.edge WHERE edge_id = ?::uuid")) {
      ask.setString(1, edge());
      try (ResultSet row = ask.executeQuery()) {
        String name = row.next() ? row.getString(1) : "";
        if (!name.equals(settings.edge())) {
          throw new ForwardProblem.Refused(
              "the user in plant.yaml belongs to the workshop computer '%s' at the plant, but plant.yaml calls this one '%s': give each computer a name and a user of its own"
                  .formatted(name, settings.edge()));
        }
      }
    }
  }

  private long ask(String sql, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, arguments[i]);
      }
      try (ResultSet row = statement.executeQuery()) {
        return row.next() ? row.getLong(1) : 0;
      }
    }
  }

  /** What an edge says of itself: its clock, UTC µs, and what is wrong there, empty for nothing. */
  record Word(long nowMicros, String trouble) {}

  /**
   * All of a page or nothing; bytes sent. The word is asked for when all else was sent, so that a
   * slow page does not look like a slow clock.
   */
  long deliver(PageReader.Ready ready, Supplier<Word> word) throws SQLException {
    FeedPage page = ready.page();
    long bytes = 0;
    for (int i = 0; i < page.rows().size(); i++) {
      merge(page.rows().get(i), ready.texts().get(i));
      bytes += ready.texts().get(i).length;
    }
    new Ledger(connection, edge()).add(incarnation, page, first);
    first = false;
    seen(page.rest(), page.newestMicros(), word.get());
    connection.commit();
    return bytes;
  }

  private void merge(FeedRows rows, byte[] text) throws SQLException {
    MergeSql sql = staged(rows);
    copy(sql.copy(), text);
    try (PreparedStatement merge = connection.prepareStatement(sql.merge())) {
      merge.setString(1, edge());
      merge.setInt(2, incarnation);
      merge.executeUpdate();
    }
  }

  private MergeSql staged(FeedRows rows) throws SQLException {
    MergeSql known = staged.get(rows.table());
    if (known != null) {
      return known;
    }
    MergeSql made = new MergeSql(rows.table(), rows.columns());
    try (PreparedStatement stage = connection.prepareStatement(made.stage())) {
      stage.executeUpdate();
    }
    staged.put(rows.table(), made);
    return made;
  }

  private void copy(String sql, byte[] text) throws SQLException {
    var in = connection.unwrap(PGConnection.class).getCopyAPI().copyIn(sql);
    try {
      in.writeToCopy(text, 0, text.length);
      long unused = in.endCopy();
    } finally {
      if (in.isActive()) {
        in.cancelCopy();
      }
    }
  }

  /** Says to the plant that this edge is there, and what it still has to deliver. */
  void alive(FeedPage.Rest rest, Word word) throws SQLException {
    seen(rest, 0, word);
    connection.commit();
  }

  private void seen(FeedPage.Rest rest, long newestMicros, Word word) throws SQLException {
    try (PreparedStatement update =
        connection.prepareStatement(
            "UPDATE plant.edge SET seen_micros = plant.now_micros(), backlog_rows = ?,"
                + " newest_edge_micros = greatest(newest_edge_micros, ?), trouble = ?,"
                + " clock_ahead_micros = ? - plant.now_micros() WHERE edge_id = ?::uuid")) {
      update.setLong(1, rest.rows());
      update.setLong(2, Math.max(rest.lastMicros(), newestMicros));
      update.setString(3, word.trouble());
      update.setLong(4, word.nowMicros());
      update.setString(5, edge());
      update.executeUpdate();
    }
  }

  /** What people at the plant ask of this edge. */
  PlantRequests requests() {
    return new PlantRequests(connection, edge());
  }

  /** Any thread: whatever is waited for ends with an exception. */
  void abort() throws SQLException {
    connection.abort(Runnable::run);
  }

  @Override
  public void close() throws SQLException {
    connection.close();
  }
}
