package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.store.Feed;
import org.chordlog.store.FeedPage;
import org.chordlog.store.FeedPlace;
import org.chordlog.store.FeedTable;
import org.chordlog.store.Kept;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.Test;

/** The feed in a file of SQLite. */
final class FeedTest extends Released {
  /** What a plant is not told: secrets, bookkeeping, samples, and what is made from the rest. */
  private static final Set<String> NOT_TOLD =
      Set.of(
          "access_token",
          "account",
          "alert_cursor",
          "alert_delivery",
          "alert_message",
          "answered_request",
          "change_feed",
          "checkpoint",
          "identity",
          "job_total",
          "seal",
          "session",
          "trace_block");

  /** A table that is new is told to the plant, with its triggers, or named above. */
  @Test
  void everyTableIsToldOrKnownNotToBe() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      Set<String> tables = names(store, "SELECT name FROM sqlite_schema WHERE type = 'table'");
      Set<String> known = new TreeSet<>(NOT_TOLD);
      Stream.of(FeedTable.values()).map(FeedTable::table).forEach(known::add);
      assertEquals(known, tables);
    }
  }

  @Test
  void everyTableOfFactsHasItsTriggersAndReadingsHaveNone() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      Set<String> expected = new TreeSet<>();
      for (FeedTable each : FeedTable.values()) {
        if (each.holdsFacts()) {
          Stream.of("_added", "_changed", "_removed")
              .map(each.table()::concat)
              .forEach(expected::add);
        }
      }
      assertEquals(expected, names(store, "SELECT name FROM sqlite_schema WHERE type = 'trigger'"));
    }
  }

  private static Set<String> names(SqliteStore store, String sql) {
    return store.database().read(c -> Sql.list(c, sql, row -> row.getString(1))).stream()
        .filter(name -> !name.startsWith("sqlite_"))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void everythingOfAReleasedFileIsInItsFirstFeed() throws Exception {
    try (SqliteStore store = openFull()) {
      Feed feed = store.feed().orElseThrow();
      assertEquals(1, feed.edge().incarnation());
      FeedPage page = feed.page(FeedPlace.BEGINNING, 100_000, 1 << 30);
      for (FeedTable each : FeedTable.values()) {
        long rows =
            store.database().read(c -> Sql.number(c, "SELECT count(*) FROM " + each.table()));
        assertEquals(
            rows,
            page.rows().stream()
                .filter(r -> r.table() == each)
                .mapToLong(r -> r.rows().size())
                .sum(),
            each.table());
      }
      assertTrue(page.count() > 80, () -> "only " + page.count());
    }
  }

  /** The journal grows by no page more for them: nothing is written beside the readings. */
  @Test
  void readingsLeaveTheFeedAlone() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      var like = Kept.first(store);
      long before = changes(store);
      store.readings().append(like).join();
      assertEquals(before, changes(store));
    }
  }

  private static long changes(SqliteStore store) {
    return store.database().read(c -> Sql.number(c, "SELECT max(revision) FROM change_feed"));
  }

  @Test
  void aRecordThatTheFeedDoesNotNameIsFoundByAnAudit() throws Exception {
    Sealed data = Sealed.in(directory.resolve("data"));
    assertEquals(List.of(), new SqliteFiles(data.directory()).audit());
    data.edit("DELETE FROM change_feed WHERE table_name = 'job' AND key = 1");
    assertEquals(
        List.of("feed for the plant: job 1 is missing in it"),
        new SqliteFiles(data.directory()).audit());
  }

  /** A row that another program changes or adds is told, too. */
  @Test
  void editsBehindTheProgramAreTold() throws Exception {
    Sealed data = Sealed.in(directory.resolve("data"));
    FeedPlace before = newest(data.directory());
    data.edit(
        "UPDATE master SET name = name",
        "UPDATE job SET name = 'other' WHERE id = 1",
        "DELETE FROM active_job");
    assertEquals(before.revision() + 1, newest(data.directory()).revision());
  }

  private static FeedPlace newest(Path directory) {
    try (SqliteStore reader = SqliteStore.openForReading(directory)) {
      return reader.feed().orElseThrow().newest();
    }
  }
}
