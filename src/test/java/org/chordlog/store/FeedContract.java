package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.chordlog.measure.Change;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.junit.jupiter.api.Test;

/** What the feed of a store whose records are made in it gives to a plant. */
public abstract class FeedContract extends StoreContract {
  private static final int MANY = 10_000;
  private static final long LARGE = 1L << 30;

  protected FeedContract(Opener opener) {
    super(opener);
  }

  private Feed feed() {
    return store.feed().orElseThrow();
  }

  private FeedPage page(FeedPlace after) {
    return feed().page(after, MANY, LARGE);
  }

  private static List<FeedRow> rows(FeedPage page, FeedTable of) {
    return page.rows().stream()
        .filter(each -> each.table() == of)
        .flatMap(each -> each.rows().stream())
        .toList();
  }

  private static Object value(FeedPage page, FeedTable of, int row, String column) {
    FeedRows all = page.rows().stream().filter(r -> r.table() == of).findFirst().orElseThrow();
    return String.valueOf(all.rows().get(row).values().get(all.columns().indexOf(column)));
  }

  @Test
  void everyFactComesOnceWithItsNewestStateInTheOrderOfTheChanges() {
    Job first = store.jobs().add(Some.job("first", "M"), "me");
    Job second = store.jobs().add(Some.job("second", "M"), "me");
    Job closed = store.jobs().update(first.withState(Job.State.CLOSED), "me", "done");
    FeedPage page = page(FeedPlace.BEGINNING);
    List<FeedRow> jobs = rows(page, FeedTable.JOB);
    assertEquals(2, jobs.size());
    assertTrue(jobs.get(0).revision() < jobs.get(1).revision());
    assertEquals("" + second.id(), value(page, FeedTable.JOB, 0, "id"));
    assertEquals("" + closed.id(), value(page, FeedTable.JOB, 1, "id"));
    assertEquals("CLOSED", value(page, FeedTable.JOB, 1, "state"));
    assertEquals(FeedPage.Rest.NONE, page.rest());
    assertEquals(feed().newest(), page.to());
    assertEquals(0, page(page.to()).count());
  }

  @Test
  void aChangeAfterThePlaceComesAlone() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    FeedPlace before = page(FeedPlace.BEGINNING).to();
    store.jobs().activate("A", job.id());
    store.jobs().activate("A", job.id());
    FeedPage page = page(before);
    assertEquals(List.of(FeedTable.ACTIVE_JOB), page.rows().stream().map(FeedRows::table).toList());
    assertEquals(1, page.count());
    assertEquals("A", value(page, FeedTable.ACTIVE_JOB, 0, "station"));
  }

  @Test
  void readingsAreNoChangesAndFollowTheFacts() {
    Reading like = Kept.first(store);
    FeedPlace before = page(FeedPlace.BEGINNING).to();
    append(like, 1, 20);
    FeedPage page = page(before);
    assertEquals(before.revision(), page.to().revision());
    assertEquals(20, page.to().readingId());
    assertEquals(20, rows(page, FeedTable.READING).size());
    assertEquals(20, page.count());
    assertEquals(store.readings().find(20).orElseThrow().wallMicros(), page.newestMicros());
    assertEquals(
        store.readings().find(3).orElseThrow().radius().curvaturePerMm(),
        rows(page, FeedTable.READING)
            .get(2)
            .values()
            .get(columns(page).indexOf("curvature_per_mm")));
  }

  private static List<String> columns(FeedPage page) {
    return page.rows().get(page.rows().size() - 1).columns();
  }

  private void append(Reading like, int first, int last) {
    for (int i = first; i <= last; i++) {
      Reading unused =
          store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())).join();
    }
  }

  @Test
  void pagesFollowEachOtherWithoutGapAndRepetition() {
    append(Kept.first(store), 1, 25);
    store.jobs().add(Some.job("K", "M"), "me");
    FeedPlace at = FeedPlace.BEGINNING;
    FeedPage.Rest all = feed().rest(at);
    List<Long> revisions = new ArrayList<>();
    int count = 0;
    FeedPage page = feed().page(at, 4, LARGE);
    while (page.count() > 0) {
      boolean facts = page.rows().stream().anyMatch(r -> r.table().holdsFacts());
      boolean readings = page.to().readingId() > at.readingId();
      assertTrue(page.count() <= 4);
      assertTrue(!readings || page.to().revision() == feed().newest().revision());
      assertTrue(facts || readings);
      page.rows().forEach(r -> r.rows().forEach(row -> revisions.add(row.revision())));
      count += page.count();
      assertEquals(all.rows() - count, page.rest().rows());
      at = page.to();
      page = feed().page(at, 4, LARGE);
    }
    assertEquals(all.rows(), count);
    List<Long> facts = revisions.stream().filter(r -> r > 0).toList();
    assertEquals(facts.size(), new HashSet<>(facts).size());
    assertEquals(25, all.readings());
    assertEquals(store.readings().find(1).orElseThrow().wallMicros(), all.firstMicros());
    assertEquals(store.readings().find(25).orElseThrow().wallMicros(), all.lastMicros());
  }

  @Test
  void largeProfilesMakeAPageShorterAndStayWithTheirReadings() {
    Reading like = Kept.first(store);
    List<PassedProfile> two = List.of(profile(1), profile(2));
    for (int i = 1; i <= 6; i++) {
      Reading next = Some.reading("A", i, like.jobId(), like.setUpId());
      store.readings().append(next, two).join();
    }
    FeedPlace at = new FeedPlace(feed().newest().revision(), 0);
    Set<Long> seen = new HashSet<>();
    FeedPage page = feed().page(at, MANY, 1);
    while (page.count() > 0) {
      assertEquals(2 * rows(page, FeedTable.READING).size(), rows(page, FeedTable.PROFILE).size());
      rows(page, FeedTable.READING).forEach(row -> seen.add((Long) row.values().get(0)));
      assertEquals(1, page.to().readingId() - at.readingId());
      at = page.to();
      page = feed().page(at, MANY, 1);
    }
    assertEquals(6, seen.size());
  }

  private static PassedProfile profile(int pass) {
    return new PassedProfile(
        pass,
        new byte[] {1, 2, 3},
        new PassedProfile.Basis(
            LengthSource.CHANNEL,
            Face.INNER,
            new KnownLengths(6000.0, 0.1 + 0.2, null, 60.0, null),
            DecideBy.BOTH,
            new PassedProfile.Extent(1.25, 5990.0, true, false, 3)));
  }

  @Test
  void theChainOfHashesIsToldOfEachPage() {
    append(Kept.first(store), 1, 3);
    FeedPage page = page(FeedPlace.BEGINNING);
    assertEquals(store.seal(), page.tip());
    assertEquals(Optional.of(page.tip().hash()), feed().sealHash(page.tip().seq()));
    assertEquals(Optional.empty(), feed().sealHash(page.tip().seq() + 1));
    assertTrue(feed().sealHash(0).isPresent());
  }

  @Test
  void aMarkHoldsUntilItsRecordChanges() {
    Job job = store.jobs().add(Some.job("J", "M"), "me");
    store.jobs().activate("A", job.id());
    FeedPage page = page(FeedPlace.BEGINNING);
    assertEquals(OptionalLong.of(page.mark()), feed().mark(page.to().revision()));
    store.jobs().activate("A", job.id());
    assertEquals(OptionalLong.empty(), feed().mark(page.to().revision()));
    assertNotEquals(page.mark(), page(FeedPlace.BEGINNING).mark());
  }

  @Test
  void aNewIncarnationIsHigherThanBothAndStaysAfterAStart() {
    assertEquals(new Feed.Edge(store.identity(), 1), feed().edge());
    assertEquals(5, feed().beginIncarnation(4, begun()));
    assertEquals(6, feed().beginIncarnation(2, begun()));
    assertEquals(begun().why(), store.changes().list(Long.MAX_VALUE, 1).get(0).why());
    reopen();
    assertEquals(6, feed().edge().incarnation());
  }

  private static Change begun() {
    return new Change(0, Some.T0, "service", "data", "1", "2", "another history");
  }

  @Test
  void aRestoreBeginsANewIncarnation() {
    Path copy = directory.resolve("copy.db");
    files(directory).backup(copy);
    int last = 1;
    for (int i = 0; i < 3; i++) {
      store.close();
      assertTrue(files(directory).restore(copy).verified());
      open();
      assertTrue(feed().edge().incarnation() > last);
      last = feed().edge().incarnation();
    }
    assertEquals(List.of(), files(directory).audit());
  }

  @Test
  void aReaderBesideTheWriterReadsTheFeedAndBeginsNothing() {
    append(Kept.first(store), 1, 3);
    try (Store reader = openForReading(directory)) {
      Feed beside = reader.feed().orElseThrow();
      assertEquals(feed().newest(), beside.newest());
      assertThrows(StoreException.class, () -> beside.beginIncarnation(1, begun()));
    }
  }

  /** Each of these is another kind of record. */
  @Test
  void nothingIsForgotten() {
    Reading kept = store.readings().append(Kept.first(store)).join();
    FeedPlace at = page(FeedPlace.BEGINNING).to();
    store.readings().add(Some.exclusion(kept.id(), true));
    store.readings().add(Some.exclusion(kept.id(), false));
    FeedPage page = page(at);
    assertEquals(
        LongStream.rangeClosed(at.revision() + 1, page.to().revision()).boxed().toList(),
        IntStream.range(0, page.rows().size())
            .boxed()
            .flatMap(i -> page.rows().get(i).rows().stream())
            .map(FeedRow::revision)
            .sorted()
            .toList());
    assertEquals(2, rows(page, FeedTable.EXCLUSION).size());
  }
}
