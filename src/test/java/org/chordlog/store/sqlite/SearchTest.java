package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Reading;
import org.chordlog.store.Kept;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Some;
import org.chordlog.store.sql.ReadingSearch;
import org.chordlog.store.sql.Sql;
import org.chordlog.store.sql.Where;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** SQLite's own plans of how it finds readings. */
final class SearchTest {
  @TempDir Path directory;

  /** No page needs a sort or a scan of the table. */
  @Test
  void everyFormOfPageWalksAnIndexInItsOrder() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      long job = fill(store);
      List<ReadingQuery> all =
          Stream.of(ReadingQuery.oldest(job, 13), ReadingQuery.newest(job, 13))
              .flatMap(SearchTest::forms)
              .toList();
      assertEquals(12, all.size());
      for (ReadingQuery query : all) {
        ReadingSearch search = new ReadingSearch(query);
        Where where = search.where();
        String plan = plan(store, search.sql(where), where.arguments(query.page().limit()));
        assertFalse(plan.contains("TEMP B-TREE"), () -> query + ": " + plan);
        assertFalse(plan.contains("SCAN r"), () -> query + ": " + plan);
      }
    }
  }

  private static long fill(SqliteStore store) {
    Reading first = Kept.first(store);
    for (int i = 1; i <= 200; i++) {
      var unused = store.readings().append(Some.reading("A", i, first.jobId(), first.setUpId()));
    }
    return first.jobId();
  }

  private static Stream<ReadingQuery> forms(ReadingQuery query) {
    return Stream.of(
        query.after(7L),
        query.at("end").after(7L),
        query.decided(Decision.DOES_NOT_CONFORM).after(7L),
        query.decided(Decision.CONFORMS),
        query.at("end").decided(Decision.UNDECIDED).excluded(false).after(7L),
        query.between(1L, 2L).after(7L));
  }

  private static String plan(SqliteStore store, String sql, Object[] arguments) {
    String explained = "EXPLAIN QUERY PLAN " + sql;
    List<String> lines =
        store.database().read(c -> Sql.list(c, explained, row -> row.getString(4), arguments));
    return String.join("; ", lines);
  }

  /** Exclusions are looked up by reading, not by a scan of all there ever were. */
  @Test
  void exclusionsOfAPageAreFoundByTheirReadings() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      String sql =
          "SELECT * FROM exclusion WHERE reading_id IN ("
              + new SqliteDialect().wholeNumbersOf()
              + ") ORDER BY id";
      String plan = plan(store, sql, new Object[] {"[1,2]"});
      assertFalse(plan.contains("SCAN exclusion"), plan);
    }
  }
}
