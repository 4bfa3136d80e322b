package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.stream.LongStream;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.DecideBy;
import org.chordlog.measure.Face;
import org.chordlog.measure.Job;
import org.chordlog.measure.KnownLengths;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.PassedProfile;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.measure.Sample;
import org.chordlog.measure.SetUp;
import org.junit.jupiter.api.Test;

/** Readings as they are appended, in which order they become visible, and what they count as. */
public abstract class ReadingsContract extends StoreContract {
  private static final List<ReadingKind> KINDS =
      List.of(ReadingKind.PRODUCT, ReadingKind.MASTER, ReadingKind.CHECK);

  protected ReadingsContract(Opener opener) {
    super(opener);
  }

  @Test
  void everyReadingComesBackEqualAfterReopening() {
    Reading first = Kept.first(store);
    List<Reading> kept = new ArrayList<>();
    for (int i = 1; i <= 50; i++) {
      Reading reading = Some.reading("A", i, first.jobId(), first.setUpId());
      Reading done = store.readings().append(reading).join();
      assertEquals(reading.withId(done.id()), done);
      kept.add(done);
    }
    reopen();
    assertEquals(kept, store.readings().ofJob(first.jobId(), 0, 100));
    assertEquals(kept, store.readings().all(0, 100));
    assertEquals(kept.get(7), store.readings().find(kept.get(7).id()).orElseThrow());
    assertEquals(50, store.readings().countOfJob(first.jobId()));
    assertEquals(50, store.readings().countOfMachine("M"));
    assertEquals(50, store.readings().lastSequence("A"));
    assertEquals(kept.get(49).id(), store.readings().lastId());
  }

  @Test
  void theCircumstancesComeBackToo() {
    Reading first = Kept.first(store);
    Circumstances full = new Circumstances(ReadingKind.PRODUCT, 3, 2, "Öllinger", "lot 7");
    Reading kept = store.readings().append(first.withCircumstances(full)).join();
    reopen();
    assertEquals(full, store.readings().find(kept.id()).orElseThrow().circumstances());
  }

  @Test
  void theProfilesOfAPieceThatRanThroughComeBackWithTheirBasis() {
    Reading first = Kept.first(store);
    PassedProfile.Basis basis =
        new PassedProfile.Basis(
            LengthSource.CHANNEL,
            Face.INNER,
            new KnownLengths(6000.0, 0.1 + 0.2, null, 60.0, null),
            DecideBy.BOTH,
            new PassedProfile.Extent(1.25, 5990.0, true, false, 3));
    PassedProfile one = new PassedProfile(1, new byte[] {1, 2, 3}, basis);
    PassedProfile two = new PassedProfile(2, new byte[] {4}, basis);
    Reading kept = store.readings().append(first, List.of(one, two)).join();
    Reading without = Some.reading("A", 2, first.jobId(), first.setUpId());
    long other = store.readings().append(without).join().id();
    reopen();
    List<PassedProfile> back = store.readings().profiles(kept.id());
    assertEquals(List.of(1, 2), back.stream().map(PassedProfile::pass).toList());
    assertArrayEquals(one.packed(), back.get(0).packed());
    assertArrayEquals(two.packed(), back.get(1).packed());
    assertEquals(basis, back.get(0).basis());
    assertEquals(List.of(), store.readings().profiles(other));
  }

  @Test
  void nothingIsThereAtTheBeginning() {
    assertEquals(0, store.readings().lastId());
    assertEquals(0, store.readings().lastSequence("A"));
    assertEquals(0, store.readings().countOfJob(1));
    assertEquals(Optional.empty(), store.readings().find(1));
    assertEquals(Optional.empty(), store.readings().setUp(1));
    assertEquals(List.of(), store.readings().ofJob(1, 0, 10));
  }

  @Test
  void equalSetUpsAreOneAndComeBackEqual() {
    Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
    SetUp setUp = Some.setUp(bridge);
    long id = store.readings().keep(setUp);
    assertEquals(id, store.readings().keep(Some.setUp(bridge)));
    reopen();
    assertEquals(id, store.readings().keep(setUp));
    assertEquals(setUp, store.readings().setUp(id).orElseThrow());
    assertTrue(store.readings().setUpText(id).orElseThrow().contains("200.013"));
  }

  /** The contract's first rule, with four stations that write and a reader that pages. */
  @Test
  void aReaderThatPagesByIdMissesNothing() {
    Reading like = Kept.first(store);
    List<CompletableFuture<?>> writers = new ArrayList<>();
    for (String station : List.of("A", "B", "C", "D")) {
      writers.add(CompletableFuture.runAsync(() -> append(station, 75, like)));
    }
    CompletableFuture<?> all = CompletableFuture.allOf(writers.toArray(CompletableFuture[]::new));
    List<Reading> seen = new ArrayList<>();
    boolean ended;
    List<Reading> page;
    do {
      ended = all.isDone();
      page = store.readings().all(seen.isEmpty() ? 0 : seen.get(seen.size() - 1).id(), 7);
      seen.addAll(page);
    } while (!ended || !page.isEmpty());
    all.join();
    assertEquals(store.readings().all(0, 10_000), seen);
    assertEquals(300, seen.size());
  }

  private void append(String station, int count, Reading like) {
    for (int i = 1; i <= count; i++) {
      store.readings().append(Some.reading(station, i, like.jobId(), like.setUpId())).join();
    }
  }

  @Test
  void futuresCompleteInTheOrderOfTheIds() {
    Reading like = Kept.first(store);
    List<Long> completed = new ArrayList<>();
    List<CompletableFuture<Void>> all = new ArrayList<>();
    for (int i = 1; i <= 100; i++) {
      all.add(
          store
              .readings()
              .append(Some.reading("A", i, like.jobId(), like.setUpId()))
              .thenAccept(kept -> completed.add(kept.id())));
    }
    all.forEach(CompletableFuture::join);
    assertEquals(completed.stream().sorted().toList(), completed);
    assertEquals(100, completed.size());
  }

  @Test
  void aReadingThatBreaksARuleIsRefusedAndTheOthersAreKept() {
    Reading reading = Kept.first(store);
    List<CompletableFuture<Reading>> all =
        List.of(
            store.readings().append(reading),
            store.readings().append(reading),
            store.readings().append(Some.reading("A", 2, 77, reading.setUpId())),
            store.readings().append(Some.reading("A", 3, reading.jobId(), 77)),
            store.readings().append(Some.reading("A", 4, reading.jobId(), reading.setUpId())));
    long first = all.get(0).join().id();
    for (CompletableFuture<Reading> refused : all.subList(1, 4)) {
      CompletionException e = assertThrows(CompletionException.class, refused::join);
      assertInstanceOf(BadInput.class, e.getCause());
    }
    assertTrue(all.get(4).join().id() > first);
    assertEquals(2, store.readings().countOfJob(reading.jobId()));
  }

  /** Blocks are written each second here; a reading does not wait for that. */
  @Test
  void aReadingIsCommittedTogetherWithItsSamples() {
    close();
    store = open(directory, new StoreSettings(1_000, 20, 50, 60_000, 0, 0));
    Reading like = Kept.first(store);
    for (int i = 1; i <= 20; i++) {
      store.traces().append("A", List.of(new Sample(i, i * 50_000_000L, Some.T0, i, 0, false)));
      store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())).join();
      assertEquals(1, store.traces().range("A", i, i, 1).size());
    }
  }

  @Test
  void mastersAndChecksAreKeptButAreNoReadingsOfTheJob() {
    Reading like = Kept.first(store);
    List<Reading> all = new ArrayList<>();
    for (int i = 1; i <= 6; i++) {
      ReadingKind kind = KINDS.get(i % 3);
      Reading reading = Some.reading("A", i, like.jobId(), like.setUpId());
      Circumstances measured = Circumstances.UNRECORDED.withKind(kind);
      all.add(store.readings().append(reading.withCircumstances(measured)).join());
    }
    List<Reading> products = List.of(all.get(2), all.get(5));
    List<Reading> masters = List.of(all.get(0), all.get(3));
    Readings readings = store.readings();
    assertEquals(all, readings.all(0, 10));
    assertEquals(6, readings.lastSequence("A"));
    assertEquals(products, readings.ofJob(like.jobId(), 0, 10));
    assertEquals(products, readings.ofMachine("M", 0, 10));
    assertEquals(products.get(1), readings.latestOfJob(like.jobId(), Long.MAX_VALUE, 1).get(0));
    assertEquals(2, readings.countOfJob(like.jobId()));
    assertEquals(2, readings.countOfMachine("M"));
    ReadingQuery query = ReadingQuery.oldest(like.jobId(), 10);
    assertEquals(products, readings.search(query));
    assertEquals(masters, readings.search(query.ofKind(ReadingKind.MASTER)));
    assertEquals(List.of(), audit(directory));
  }

  @Test
  void aMachinesReadingsComeMergedByIdOverItsJobs() {
    Reading first = Kept.first(store);
    Job second = store.jobs().add(Some.job("K", "M"), "me");
    Job elsewhere = store.jobs().add(Some.job("L", "other"), "me");
    List<Reading> expected = new ArrayList<>();
    for (int i = 1; i <= 90; i++) {
      long job = i % 3 == 0 ? elsewhere.id() : i % 3 == 1 ? second.id() : first.jobId();
      Reading kept = store.readings().append(Some.reading("B", i, job, first.setUpId())).join();
      if (i % 3 != 0) {
        expected.add(kept);
      }
    }
    List<Reading> merged = new ArrayList<>();
    List<Reading> page;
    do {
      long after = merged.isEmpty() ? 0 : merged.get(merged.size() - 1).id();
      page = store.readings().ofMachine("M", after, 17);
      merged.addAll(page);
    } while (!page.isEmpty());
    assertEquals(expected, merged);
  }

  @Test
  void theReadingsOfABridgeAreThoseBetweenTwoTimesThatCount() {
    Reading first = Kept.first(store);
    Bridge other = store.gauges().add(Some.bridge("300"), "me");
    long otherSetUp = store.readings().keep(Some.setUp(other));
    List<Reading> all = new ArrayList<>();
    for (int i = 1; i <= 40; i++) {
      long setUp = i % 2 == 0 ? first.setUpId() : otherSetUp;
      all.add(store.readings().append(Some.reading("A", i, first.jobId(), setUp)).join());
    }
    all.sort(Comparator.comparingLong(Reading::id));
    store.readings().add(Some.exclusion(all.get(19).id(), true));
    List<Long> expected =
        LongStream.of(12, 14, 16, 18, 22, 24, 26, 28)
            .mapToObj(i -> all.get((int) i - 1).id())
            .toList();
    List<Long> found =
        store
            .readings()
            .ofBridge("A", 1, all.get(9).wallMicros(), all.get(29).wallMicros(), 0, 100)
            .stream()
            .map(Reading::id)
            .toList();
    assertEquals(expected, found);
  }
}
