package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Predicate;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Reading;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Readings of a job, searched, paged, and with their exclusions. */
public abstract class ReadingPagesContract extends StoreContract {
  protected ReadingPagesContract(Opener opener) {
    super(opener);
  }

  private static final int ALL = 1_000;

  private long job;
  private final List<Reading> all = new ArrayList<>();

  @BeforeEach
  void fill() {
    Reading first = Kept.first(store);
    job = first.jobId();
    List<CompletableFuture<Reading>> kept = new ArrayList<>();
    for (int i = 1; i <= 60; i++) {
      kept.add(store.readings().append(Some.reading("A", i, job, first.setUpId())));
    }
    kept.forEach(each -> all.add(each.join()));
  }

  @Test
  void eachFilterGivesWhatALookAtEveryReadingGives() {
    exclude(30, true);
    exclude(40, true);
    exclude(40, false);
    ReadingQuery query = ReadingQuery.oldest(job, 13);
    assertPaged(r -> true, query);
    assertPaged(r -> r.position().equals("middle"), query.at("middle"));
    assertPaged(r -> r.decision() == Decision.UNDECIDED, query.decided(Decision.UNDECIDED));
    assertPaged(
        r -> r.decision() == Decision.CONFORMS && r.position().equals("end"),
        query.at("end").decided(Decision.CONFORMS));
    assertPaged(r -> r.id() == 30, query.excluded(true));
    assertPaged(r -> r.id() != 30, query.excluded(false));
    assertPaged(r -> r.id() > 20 && r.id() <= 45, query.within(20, 45));
  }

  /** Page by page, in both directions. */
  private void assertPaged(Predicate<Reading> wanted, ReadingQuery oldestFirst) {
    List<Reading> expected = new ArrayList<>(all.stream().filter(wanted).toList());
    assertEquals(expected, paged(oldestFirst));
    expected.sort(Comparator.comparingLong(Reading::id).reversed());
    ReadingQuery.Page newest = new ReadingQuery.Page(true, null, oldestFirst.page().limit());
    assertEquals(
        expected, paged(new ReadingQuery(job, oldestFirst.filter(), oldestFirst.bounds(), newest)));
  }

  private List<Reading> paged(ReadingQuery query) {
    List<Reading> found = new ArrayList<>();
    List<Reading> page;
    @Nullable Long after = null;
    do {
      page = store.readings().search(query.after(after));
      found.addAll(page);
      after = page.isEmpty() ? null : page.get(page.size() - 1).id();
    } while (!page.isEmpty());
    return found;
  }

  @Test
  void aTimeSpanIncludesItsEndsAndComesInTheOrderOfTime() {
    long from = all.get(20).wallMicros();
    long to = all.get(49).wallMicros();
    List<Reading> expected = new ArrayList<>(all.subList(20, 50));
    expected.sort(Comparator.comparingLong(Reading::wallMicros));
    assertEquals(expected, paged(ReadingQuery.oldest(job, 13).between(from, to)));
    expected.sort(Comparator.comparingLong(Reading::wallMicros).reversed());
    assertEquals(expected, paged(ReadingQuery.newest(job, 13).between(from, to)));
  }

  /** A clock that was set back: the order of ids is not that of time. */
  @Test
  void readingsOfEqualTimesComeByIdAndOlderTimesFirst() {
    Reading like = all.get(0);
    List<Reading> kept = new ArrayList<>();
    for (long sequence : new long[] {9, 3, 3, 6}) {
      Reading reading = Some.reading("B", kept.size() + 1, job, like.setUpId());
      kept.add(store.readings().append(Some.at(reading, sequence)).join());
    }
    ReadingQuery query = ReadingQuery.oldest(job, 3).between(1L, 10L);
    assertEquals(List.of(kept.get(1), kept.get(2), kept.get(3), kept.get(0)), paged(query));
  }

  @Test
  void theLastReadingsComeNewestFirst() {
    List<Reading> expected = new ArrayList<>(all.subList(40, 50));
    expected.sort(Comparator.comparingLong(Reading::id).reversed());
    assertEquals(expected, store.readings().latestOfJob(job, all.get(50).id(), 10));
  }

  @Test
  void exclusionsAndTheirUndoingStayInOrder() {
    Exclusion out = exclude(7, true);
    Exclusion in = exclude(7, false);
    Exclusion other = exclude(8, true);
    assertEquals(List.of(out, in, other), store.readings().exclusionsOfJob(job));
    assertEquals(List.of(in, other), store.readings().exclusionsOfJob(job, out.id()));
    assertEquals(List.of(other), store.readings().exclusionsOfMachine("M", in.id()));
    assertEquals(List.of(), store.readings().exclusionsOfMachine("N", 0));
    reopen();
    assertEquals(List.of(out, in, other), store.readings().exclusionsOfJob(job));
  }

  @Test
  void aReadingThatDoesNotExistCannotBeExcluded() {
    BadInput e = assertThrows(BadInput.class, () -> exclude(9_999, true));
    assertEquals("readingId", e.faults().get(0).field());
    assertEquals(List.of(), store.readings().exclusionsOfJob(job));
  }

  @Test
  void readingsComeWithTheExclusionThatHoldsNow() {
    Exclusion out = exclude(30, true);
    exclude(40, true);
    exclude(40, false);
    exclude(50, true);
    exclude(50, false);
    Exclusion again = exclude(50, true);
    List<KeptReading> page = store.readings().page(ReadingQuery.newest(job, ALL));
    assertEquals(60, page.size());
    assertEquals(all.get(59), page.get(0).reading());
    assertEquals(
        List.of(again, out),
        page.stream().filter(KeptReading::excluded).map(KeptReading::exclusion).toList());
    KeptReading excluded = store.readings().kept(30).orElseThrow();
    assertEquals(new KeptReading(all.get(29), out), excluded);
    assertEquals("knocked", excluded.excludedReason());
    KeptReading counts = store.readings().kept(40).orElseThrow();
    assertFalse(counts.excluded());
    assertNull(counts.excludedReason());
    assertTrue(store.readings().kept(9_999).isEmpty());
    assertEquals(List.of(), store.readings().withExclusions(List.of()));
  }

  private Exclusion exclude(long id, boolean out) {
    return store.readings().add(Some.exclusion(id, out));
  }
}
