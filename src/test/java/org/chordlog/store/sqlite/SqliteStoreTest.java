package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.measure.SetUp;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.StoreSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class SqliteStoreTest {
  @TempDir Path directory;

  @Test
  void everyRecordComesBackEqualAfterReopening() {
    SetUp setUp;
    List<Reading> kept = new ArrayList<>();
    try (SqliteStore store = SqliteStore.open(directory)) {
      Bridge bridge = store.gauges().add(Some.bridge("200"), "me");
      setUp = Some.setUp(bridge);
      long setUpId = store.readings().keep(setUp);
      assertEquals(setUpId, store.readings().keep(setUp));
      Job job = store.jobs().add(Some.job("J", "M"), "me");
      store.jobs().activate("A", job.id());
      for (int i = 1; i <= 50; i++) {
        Reading reading = Some.reading("A", i, job.id(), setUpId);
        Reading done = store.readings().append(reading).join();
        assertEquals(reading.withId(done.id()), done);
        kept.add(done);
      }
    }
    try (SqliteStore store = SqliteStore.open(directory)) {
      Job job = store.jobs().activeOn("A").orElseThrow();
      assertEquals(Some.job("J", "M").specification(), job.specification());
      assertEquals(kept, store.readings().ofJob(job.id(), 0, 100));
      assertEquals(50, store.readings().countOfJob(job.id()));
      assertEquals(50, store.readings().lastSequence("A"));
      assertEquals(setUp, store.readings().setUp(kept.get(0).setUpId()).orElseThrow());
    }
  }

  @Test
  void aReadingIsOnDiskWhenItsFutureCompletes() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory);
        Connection other = Connections.reader(directory.resolve(SqliteStore.FILE_NAME))) {
      Reading kept = store.readings().append(Kept.first(store)).join();
      long seen = Sql.number(other, "SELECT depth_nm FROM reading WHERE id = ?", kept.id());
      assertEquals(kept.depthNm(), seen);
    }
  }

  @Test
  void sameStationAndSequenceIsRefusedAndTheRestOfTheBatchKept() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      Reading reading = Kept.first(store);
      List<CompletableFuture<Reading>> all = new ArrayList<>();
      all.add(store.readings().append(reading));
      all.add(store.readings().append(reading));
      all.add(store.readings().append(Some.reading("A", 2, reading.jobId(), reading.setUpId())));
      assertEquals(1, all.get(0).join().id());
      CompletionException e = assertThrows(CompletionException.class, () -> all.get(1).join());
      assertTrue(e.getCause() instanceof BadInput, e::toString);
      assertEquals(2, all.get(2).join().id());
      assertEquals(2, store.readings().countOfJob(reading.jobId()));
    }
  }

  @Test
  void exclusionsAndTheirUndoingStayInOrder() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      Reading kept = store.readings().append(Kept.first(store)).join();
      Exclusion out =
          store.readings().add(new Exclusion(0, kept.id(), true, "knocked", Some.T0, "me"));
      Exclusion in =
          store.readings().add(new Exclusion(0, kept.id(), false, "was fine", Some.T0, "me"));
      assertEquals(List.of(out, in), store.readings().exclusionsOfJob(kept.jobId()));
      BadInput e =
          assertThrows(
              BadInput.class,
              () -> store.readings().add(new Exclusion(0, 99, true, "none", Some.T0, "me")));
      assertEquals("readingId", e.faults().get(0).field());
    }
  }

  @Test
  void samplesComeBackByTheirSequence() {
    List<Sample> samples = new ArrayList<>();
    for (int i = 1; i <= 300; i++) {
      samples.add(
          new Sample(i, i * 50_000_000L, Some.T0 + i * 50_000L, i % 60 * 10_000L, 0, false));
    }
    try (SqliteStore store = SqliteStore.open(directory, Some.KEEPING_ALL)) {
      assertTrue(store.traces().append("A", samples));
    }
    try (SqliteStore store = SqliteStore.open(directory, Some.KEEPING_ALL)) {
      assertEquals(300, store.traces().lastSequence("A"));
      assertEquals(samples.subList(99, 200), store.traces().range("A", 100, 200, 1_000));
      assertEquals(1, store.traces().prune(Some.T0 * 2));
      assertEquals(List.of(), store.traces().range("A", 1, 300, 1_000));
    }
  }

  @Test
  void aSecondInstanceIsRefused() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(directory));
      assertTrue(e.toString().contains("in use by another instance"), e::toString);
      assertEquals("", store.health().fault());
    }
  }

  @Test
  void aDirectoryThatIsAFileIsRefused() throws Exception {
    Path file = Files.writeString(directory.resolve("file"), "x");
    BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(file));
    assertEquals("data", e.faults().get(0).field());
  }

  @Test
  void aNewerSchemaIsRefusedAndLeftAsItWas() throws Exception {
    SqliteStore.open(directory).close();
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    try (Connection connection = Connections.writer(file)) {
      Sql.run(connection, "PRAGMA user_version = 99");
    }
    BadInput e = assertThrows(BadInput.class, () -> SqliteStore.open(directory));
    assertTrue(e.toString().contains("version 99"), e::toString);
  }

  @Test
  void aBackupTakenWhileOpenOpensByItself() {
    Path copy = directory.resolve("copy");
    try (SqliteStore store = SqliteStore.open(directory)) {
      Reading kept = store.readings().append(Kept.first(store)).join();
      copy.toFile().mkdir();
      new SqliteFiles(directory).backup(copy.resolve(SqliteStore.FILE_NAME));
      try (SqliteStore other = SqliteStore.open(copy)) {
        assertEquals(kept, other.readings().find(kept.id()).orElseThrow());
      }
    }
  }

  /** Else a restart would number new samples as those that a reading names. */
  @Test
  void samplesGoOnAfterThoseThatAReadingNames() {
    try (SqliteStore store = SqliteStore.open(directory)) {
      Reading kept = store.readings().append(Kept.first(store)).join();
      assertEquals(kept.captured().lastSequence(), store.traces().lastSequence("A"));
      assertEquals(0, store.traces().lastSequence("B"));
    }
  }

  /** Blocks are written each tick, here a second; a reading does not wait for it. */
  @Test
  void aReadingIsKeptTogetherWithItsSamples() {
    StoreSettings slow = new StoreSettings(1_000, 20, 50, 60_000, 0, 0);
    try (SqliteStore store = SqliteStore.open(directory, slow)) {
      Reading reading = Kept.first(store);
      for (int i = 1; i <= 20; i++) {
        store.traces().append("A", List.of(new Sample(i, i * 50_000_000L, Some.T0, i, 0, false)));
        store.readings().append(Some.reading("A", i, reading.jobId(), reading.setUpId())).join();
        assertEquals(1, store.traces().range("A", i, i, 1).size());
      }
    }
  }
}
