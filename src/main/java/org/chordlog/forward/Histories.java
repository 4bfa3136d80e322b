package org.chordlog.forward;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import org.chordlog.measure.Change;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPlace;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Whether what the plant has of this database is a part of what is recorded here. Where it is not
 * (restored from a backup, an older file put in its place, a copy that went on elsewhere), a new
 * history is begun at the plant after the last records that both have; what the plant has beyond
 * stays there.
 */
final class Histories {
  private static final Logger LOG = LoggerFactory.getLogger(Histories.class);
  private static final int PAGE = 1_000;

  /** In the record of changes. */
  static final String WHAT = "plant";

  private static final String BY = "Chordlog";

  private final Connection connection;
  private final Feed feed;
  private final Ledger ledger;
  private final long nowMicros;

  Histories(Connection connection, Feed feed, long nowMicros) {
    this.connection = connection;
    this.feed = feed;
    this.ledger = new Ledger(connection, feed.edge().uuid());
    this.nowMicros = nowMicros;
  }

  /** A former history and after which reading it began. */
  private record Branch(int incarnation, long beginsAfter) {}

  /** Where to go on; {@code atPlant}: the incarnation that the plant knows. */
  FeedPlace goOn(int atPlant) throws SQLException {
    int own = feed.edge().incarnation();
    if (own == atPlant && isPart(ledger.newest(own))) {
      return ledger.newest(own).map(Ledger.Row::place).orElse(new FeedPlace(0, begin(own)));
    }
    if (branches().isEmpty()) {
      beginAtPlant(own, 0, "first delivery");
      return FeedPlace.BEGINNING;
    }
    Shared shared = shared(atPlant);
    String why = why(shared, own > atPlant);
    int next = feed.beginIncarnation(atPlant, change(atPlant, why));
    beginAtPlant(next, shared.readingId(), why);
    LOG.atWarn().addKeyValue("history", next).log(why);
    return new FeedPlace(0, shared.readingId());
  }

  /**
   * Whether that row tells of records that are here, too; nothing arrived is part of everything.
   */
  private boolean isPart(Optional<Ledger.Row> newest) {
    if (newest.isEmpty()) {
      return true;
    }
    Ledger.Row row = newest.get();
    FeedPlace own = feed.newest();
    OptionalLong mark = feed.mark(row.place().revision());
    return row.place().readingId() <= own.readingId()
        && row.place().revision() <= own.revision()
        && (row.place().revision() == 0 || mark.isEmpty() || mark.getAsLong() == row.mark())
        && sealed(row);
  }

  private boolean sealed(Ledger.Row row) {
    return feed.sealHash(row.sealSeq()).filter(row.sealHash()::equals).isPresent();
  }

  /** The last reading that both have, and how many the plant has of a former history beyond it. */
  private record Shared(long readingId, long beyond) {}

  private Shared shared(int atPlant) throws SQLException {
    long arrived = ledger.newest(atPlant).map(r -> r.place().readingId()).orElse(begin(atPlant));
    long most = Long.MAX_VALUE;
    for (Branch each : branches()) {
      Optional<Ledger.Row> same = newestSealed(each.incarnation());
      if (same.isPresent()) {
        most = Math.min(most, same.get().place().readingId());
        break;
      }
      most = Math.min(most, each.beginsAfter());
    }
    long last = Math.min(most, feed.newest().readingId());
    return new Shared(last, Math.max(0, arrived - last));
  }

  /** The newest row of an incarnation that the own chain of hashes agrees with. */
  private Optional<Ledger.Row> newestSealed(int incarnation) throws SQLException {
    long below = Long.MAX_VALUE;
    List<Ledger.Row> page = ledger.older(incarnation, below, PAGE);
    while (!page.isEmpty()) {
      for (Ledger.Row row : page) {
        if (sealed(row)) {
          return Optional.of(row);
        }
        below = row.sealSeq() - 1;
      }
      page = ledger.older(incarnation, below, PAGE);
    }
    return Optional.empty();
  }

  private String why(Shared shared, boolean byCommand) {
    String found =
        byCommand
            ? "a backup was restored"
            : "the database is not the one that was delivered before: an older file, or a copy,"
                + " was put in its place";
    return "%s; both agree up to reading %s; %s later readings of the former history stay at the plant"
        .formatted(found, shared.readingId(), shared.beyond());
  }

  private Change change(int before, String why) {
    return new Change(0, nowMicros, BY, WHAT, "history " + before, "history " + (before + 1), why);
  }

  /** The newest first. */
  private List<Branch> branches() throws SQLException {
    String sql =
        "SELECT incarnation, coalesce(begins_after_reading_id, 0) FROM"
            + " (SELECT incarnation FROM plant.batch WHERE edge_id = ?::uuid UNION SELECT"
            + " incarnation FROM plant.branch WHERE edge_id = ?::uuid) known LEFT JOIN"
            + " (SELECT incarnation, begins_after_reading_id FROM plant.branch WHERE edge_id ="
            + " ?::uuid) begun USING (incarnation) ORDER BY incarnation DESC";
    try (PreparedStatement all = connection.prepareStatement(sql)) {
      for (int i = 1; i <= 3; i++) {
        all.setString(i, feed.edge().uuid());
      }
      List<Branch> found = new ArrayList<>();
      try (ResultSet row = all.executeQuery()) {
        while (row.next()) {
          found.add(new Branch(row.getInt(1), row.getLong(2)));
        }
      }
      return found;
    }
  }

  private long begin(int incarnation) throws SQLException {
    return branches().stream()
        .filter(each -> each.incarnation() == incarnation)
        .mapToLong(Branch::beginsAfter)
        .findFirst()
        .orElse(0);
  }

  private void beginAtPlant(int incarnation, long after, String why) throws SQLException {
    String edge = feed.edge().uuid();
    run("UPDATE plant.edge SET incarnation = ? WHERE edge_id = ?::uuid", incarnation, edge);
    run(
        "INSERT INTO plant.branch (edge_id, incarnation, begins_after_reading_id, begun_micros, why)"
            + " VALUES (?::uuid, ?, ?, plant.now_micros(), ?)",
        edge,
        incarnation,
        after,
        why);
    run(
        "INSERT INTO plant.job_total (edge_id, incarnation, job_id, readings, first_reading_id,"
            + " last_reading_id) SELECT ?::uuid, ?, job_id, count(*), min(id), max(id)"
            + " FROM edge.reading WHERE kind = 'PRODUCT' GROUP BY job_id",
        edge,
        incarnation);
    connection.commit();
  }

  private void run(String sql, Object... arguments) throws SQLException {
    try (PreparedStatement statement = connection.prepareStatement(sql)) {
      for (int i = 0; i < arguments.length; i++) {
        statement.setObject(i + 1, Objects.requireNonNull(arguments[i]));
      }
      statement.executeUpdate();
    }
  }
}
