package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Predicate;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.store.JobQuery;
import org.chordlog.store.Kept;
import org.chordlog.store.ReadingQuery;
import org.chordlog.store.Some;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SearchTest {
  @TempDir Path directory;
  private SqliteStore store;
  private Reading first;
  private final List<Reading> all = new ArrayList<>();

  @BeforeEach
  void fill() {
    store = SqliteStore.open(directory);
    first = Kept.first(store);
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    for (int i = 1; i <= 200; i++) {
      kept.add(store.readings().append(Some.reading("A", i, first.jobId(), first.setUpId())));
    }
    kept.forEach(each -> all.add(each.join()));
  }

  @AfterEach
  void close() {
    store.close();
  }

  @Test
  void eachFilterGivesWhatALookAtEveryReadingGives() {
    exclude(30, true);
    exclude(40, true);
    exclude(40, false);
    assertEquals(only(r -> r.position().equals("middle")), paged("middle", null, null, false));
    assertEquals(
        only(r -> r.decision() == Decision.UNDECIDED),
        paged(null, Decision.UNDECIDED, null, false));
    assertEquals(
        only(r -> r.decision() == Decision.CONFORMS && r.position().equals("end")),
        paged("end", Decision.CONFORMS, null, false));
    assertEquals(only(r -> r.id() == 30), paged(null, null, true, false));
    assertEquals(only(r -> r.id() != 30), paged(null, null, false, false));
  }

  @Test
  void aTimeSpanComesInTheOrderOfTime() {
    long from = all.get(50).wallMicros();
    long to = all.get(99).wallMicros();
    ReadingQuery query =
        new ReadingQuery(
            first.jobId(), null, null, null, from, to, 0, Long.MAX_VALUE, true, null, 1_000);
    List<Reading> expected = new ArrayList<>(all.subList(50, 100));
    expected.sort(Comparator.comparingLong(Reading::wallMicros).reversed());
    assertEquals(expected, store.readings().search(query));
  }

  @Test
  void aPhaseIsASpanOfIds() {
    ReadingQuery query =
        new ReadingQuery(
            first.jobId(), "start", null, null, null, null, 100, 150, false, null, 1_000);
    assertEquals(
        only(r -> r.id() > 100 && r.id() <= 150 && r.position().equals("start")),
        store.readings().search(query));
  }

  /** The plan itself, so that no page needs a sort or a scan of the table. */
  @Test
  void everyFormOfPageWalksAnIndexInItsOrder() {
    for (ReadingQuery query : forms()) {
      ReadingSearch search = new ReadingSearch(query);
      Where where = search.where();
      String plan = plan(search.sql(where), where.arguments(query.limit()));
      assertFalse(plan.contains("TEMP B-TREE"), () -> query + ": " + plan);
      assertFalse(plan.contains("SCAN r"), () -> query + ": " + plan);
    }
  }

  private List<ReadingQuery> forms() {
    List<ReadingQuery> forms = new ArrayList<>();
    for (boolean newest : new boolean[] {false, true}) {
      forms.add(query(null, null, null, newest, 7L));
      forms.add(query("end", null, null, newest, 7L));
      forms.add(query(null, Decision.DOES_NOT_CONFORM, null, newest, 7L));
      forms.add(query(null, Decision.CONFORMS, null, newest, null));
      forms.add(query("end", Decision.UNDECIDED, false, newest, 7L));
      forms.add(
          new ReadingQuery(
              first.jobId(), null, null, null, 1L, 2L, 0, Long.MAX_VALUE, newest, 7L, 10));
    }
    return forms;
  }

  private String plan(String sql, Object[] arguments) {
    return String.join(
        "; ",
        store
            .database()
            .read(
                (Connection connection) ->
                    Sql.list(
                        connection,
                        "EXPLAIN QUERY PLAN " + sql,
                        row -> row.getString(4),
                        arguments)));
  }

  @Test
  void jobsAreFoundByMachineStateTextAndDateAndPagedByName() {
    for (int i = 0; i < 25; i++) {
      store.jobs().add(Some.job("hoop " + (i % 5), i % 2 == 0 ? "M" : "N"), "me");
    }
    assertEquals(13 + 1, jobs("M", null).size());
    assertEquals(5, jobs(null, "HOOP 3").size());
    assertEquals(0, inState(Job.State.CLOSED, null).size());
    assertEquals(26, inState(Job.State.OPEN, Some.T0).size());
    assertEquals(0, inState(Job.State.OPEN, Some.T0 + 1).size());
    List<Job> byName = new ArrayList<>();
    @Nullable Long after = null;
    List<Job> page;
    do {
      page = store.jobs().search(JobQuery.inAnyState(null, null, JobQuery.Order.NAME, after, 4));
      byName.addAll(page);
      after = page.isEmpty() ? null : page.get(page.size() - 1).id();
    } while (!page.isEmpty());
    assertEquals(26, byName.size());
    List<Job> sorted = new ArrayList<>(byName);
    sorted.sort(Comparator.comparing(Job::name).thenComparing(Job::id));
    assertEquals(sorted, byName);
  }

  @Test
  void aMachinesReadingsComeMergedByIdOverItsJobs() {
    Job second = store.jobs().add(Some.job("K", "M"), "me");
    Job elsewhere = store.jobs().add(Some.job("L", "other"), "me");
    for (int i = 1; i <= 90; i++) {
      long job = i % 3 == 0 ? elsewhere.id() : i % 3 == 1 ? second.id() : first.jobId();
      all.add(store.readings().append(Some.reading("B", i, job, first.setUpId())).join());
    }
    List<Reading> merged = new ArrayList<>();
    List<Reading> page;
    do {
      long after = merged.isEmpty() ? 0 : merged.get(merged.size() - 1).id();
      page = store.readings().ofMachine("M", after, 17);
      merged.addAll(page);
    } while (!page.isEmpty());
    assertEquals(only(r -> r.jobId() != elsewhere.id()), merged);
    assertTrue(merged.size() == 260);
  }

  private List<Job> jobs(@Nullable String machine, @Nullable String text) {
    return store
        .jobs()
        .search(JobQuery.inAnyState(machine, text, JobQuery.Order.NEWEST, null, 100));
  }

  private List<Job> inState(Job.State state, @Nullable Long from) {
    return store
        .jobs()
        .search(new JobQuery(null, state, null, from, null, JobQuery.Order.OLDEST, null, 100));
  }

  private List<Reading> only(Predicate<Reading> wanted) {
    return all.stream().filter(wanted).toList();
  }

  private ReadingQuery query(
      @Nullable String position,
      @Nullable Decision decision,
      @Nullable Boolean excluded,
      boolean newest,
      @Nullable Long after) {
    return new ReadingQuery(
        first.jobId(),
        position,
        decision,
        excluded,
        null,
        null,
        0,
        Long.MAX_VALUE,
        newest,
        after,
        13);
  }

  private List<Reading> paged(
      @Nullable String position,
      @Nullable Decision decision,
      @Nullable Boolean excluded,
      boolean newest) {
    List<Reading> found = new ArrayList<>();
    List<Reading> page;
    @Nullable Long after = null;
    do {
      page = store.readings().search(query(position, decision, excluded, newest, after));
      found.addAll(page);
      after = page.isEmpty() ? null : page.get(page.size() - 1).id();
    } while (!page.isEmpty());
    return found;
  }

  private void exclude(long id, boolean out) {
    store.readings().add(new Exclusion(0, id, out, "knocked", Some.T0, "me"));
  }
}
