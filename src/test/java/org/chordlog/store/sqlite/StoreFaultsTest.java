package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import org.chordlog.Await;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.StoreException;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the store does when the disk or the file fails it. */
final class StoreFaultsTest {
  private static final StoreSettings QUICK = Some.QUICK;

  private static final int SAMPLES = 200;

  @TempDir Path directory;

  /** SQLITE_FULL by the page limit: the same error as a full disk, without a disk to fill. */
  @Test
  void aFullDiskHoldsReadingsUntilThereIsSpace() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      Reading like = Kept.first(store);
      limitPages(store, 1);
      List<CompletableFuture<Reading>> waiting = append(store, like, 1, 500);
      Await.until(() -> store.health().fault().contains("disk is full"));
      assertFalse(store.health().writable());
      assertTrue(store.health().queue().waiting() > 0);
      Await.until(() -> done(waiting) == store.readings().countOfJob(like.jobId()));
      assertThrows(StoreException.class, () -> store.jobs().add(Some.job("K", "M"), "me"));
      FullDisk.free(store);
      for (CompletableFuture<Reading> each : waiting) {
        each.join();
      }
      assertEquals(500, store.readings().countOfJob(like.jobId()));
      assertEquals("", store.health().fault());
      assertEquals(0, store.health().counts().droppedReadings());
    }
    assertEquals(List.of(), new SqliteFiles(directory).audit());
  }

  private static long done(List<CompletableFuture<Reading>> readings) {
    return readings.stream().filter(CompletableFuture::isDone).count();
  }

  @Test
  void whatCannotBeKeptAtTheEndIsCountedAndSaid() throws Exception {
    SqliteStore store = SqliteStore.open(directory, QUICK);
    Reading like = Kept.first(store);
    limitPages(store, 1);
    List<CompletableFuture<Reading>> waiting = append(store, like, 1, 500);
    Await.until(() -> !store.health().fault().isEmpty());
    long kept = store.readings().countOfJob(like.jobId());
    store.close();
    assertEquals(500 - kept, store.health().counts().droppedReadings());
    long failed = waiting.stream().filter(CompletableFuture::isCompletedExceptionally).count();
    assertEquals(500 - kept, failed);
    assertEquals(List.of(), new SqliteFiles(directory).audit());
  }

  @Test
  void aFullQueueRefusesAndCounts() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      Reading like = Kept.first(store);
      limitPages(store, 1);
      List<CompletableFuture<Reading>> all = append(store, like, 1, Writer.CAPACITY + 5_000);
      CompletableFuture<Reading> refused =
          all.stream()
              .filter(CompletableFuture::isCompletedExceptionally)
              .findFirst()
              .orElseThrow();
      CompletionException e = assertThrows(CompletionException.class, refused::join);
      assertTrue(e.toString().contains("not stored"), e::toString);
      assertTrue(store.health().counts().droppedReadings() > 0);
      FullDisk.free(store);
      Await.until(() -> all.stream().allMatch(CompletableFuture::isDone));
      long kept = all.stream().filter(each -> !each.isCompletedExceptionally()).count();
      assertEquals(kept, store.readings().countOfJob(like.jobId()));
      assertEquals(all.size() - kept, store.health().counts().droppedReadings());
    }
  }

  @Test
  void aLockHeldByAnotherProgramIsWaitedOut() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      Reading like = Kept.first(store);
      CompletableFuture<Reading> waiting;
      try (Connection other = Connections.writer(directory.resolve(SqliteStore.FILE_NAME))) {
        Sql.run(other, "BEGIN IMMEDIATE");
        waiting = store.readings().append(like);
        Await.until(() -> store.health().fault().contains("locked"));
        assertFalse(waiting.isDone());
        Sql.run(other, "ROLLBACK");
      }
      assertEquals(1, waiting.join().id());
      Await.until(() -> store.health().fault().isEmpty());
    }
  }

  @Test
  void aDamagedFileIsSetAsideAndANewOneBegun() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      append(store, Kept.first(store), 1, 2_000).forEach(CompletableFuture::join);
    }
    byte[] damaged = scribble(file);
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      assertEquals(0, store.readings().lastId());
      String warning = store.health().warnings().get(0);
      assertTrue(warning.contains("damaged"), warning);
      Path folder = directory.resolve(warning.replaceAll(".*(damaged-\\w+).*", "$1"));
      assertEquals(
          ByteBuffer.wrap(damaged),
          ByteBuffer.wrap(Files.readAllBytes(folder.resolve(SqliteStore.FILE_NAME))));
    }
  }

  @Test
  void aFileThatIsNoDatabaseIsSetAsideToo() throws Exception {
    Files.writeString(directory.resolve(SqliteStore.FILE_NAME), "not a database".repeat(1_000));
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      assertTrue(store.health().warnings().get(0).contains("damaged"));
    }
  }

  /** A block of 200 samples at a time, while another program holds the lock. */
  @Test
  void samplesBeyondTheRoomAreRefusedAndCounted() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory, QUICK);
        Connection other = Connections.writer(directory.resolve(SqliteStore.FILE_NAME))) {
      Sql.run(other, "BEGIN IMMEDIATE");
      long sequence = 0;
      while (store.traces().append("A", samples(sequence))) {
        sequence += SAMPLES;
      }
      assertEquals(TraceWriter.CAPACITY, sequence);
      assertEquals(SAMPLES, store.health().counts().droppedSamples());
      Sql.run(other, "ROLLBACK");
      long last = sequence;
      Await.until(() -> store.traces().lastSequence("A") == last);
    }
  }

  private static List<Sample> samples(long after) {
    List<Sample> samples = new ArrayList<>();
    for (long i = after + 1; i <= after + SAMPLES; i++) {
      samples.add(new Sample(i, i * 10_000_000, Some.T0 + i * 10_000, i % 90, 0, false));
    }
    return samples;
  }

  @Test
  void littleSpaceStopsSamplesButNotReadings() {
    StoreSettings greedy = QUICK.withTraceFreeBytes(Long.MAX_VALUE);
    try (SqliteStore store = SqliteStore.open(directory, greedy)) {
      Sample sample = new Sample(1, 0, Some.T0, 10_000, 0, false);
      assertFalse(store.traces().append("A", List.of(sample)));
      assertEquals(1, store.health().counts().droppedSamples());
      assertTrue(store.health().warnings().get(0).contains("space"));
      assertEquals(1, store.readings().append(Kept.first(store)).join().id());
    }
  }

  @Test
  void theWalIsEmptiedWhenIdle() throws Exception {
    try (SqliteStore store = SqliteStore.open(directory, QUICK)) {
      append(store, Kept.first(store), 1, 2_000).forEach(CompletableFuture::join);
      Await.until(() -> store.health().space().logBytes() == 0);
    }
  }

  @Test
  @Tag("slow")
  void aReaderThatDoesNotEndKeepsNothingElseOpen() throws Exception {
    SqliteStore store = SqliteStore.open(directory, QUICK);
    append(store, Kept.first(store), 1, 100).forEach(CompletableFuture::join);
    CountDownLatch end = new CountDownLatch(1);
    Thread slow = reader(store, end);
    StoreException e = assertThrows(StoreException.class, store::close);
    assertTrue(
        String.valueOf(e.getMessage()).contains("a reader did not end within 10 s"), e::toString);
    assertEquals(0, Connections.space(directory.resolve(SqliteStore.FILE_NAME)).logBytes());
    try (SqliteStore again = SqliteStore.open(directory, QUICK)) {
      assertTrue(again.health().writable());
    }
    end.countDown();
    slow.join();
  }

  @Test
  void aReaderThatEndsAfterTheStoreClosesItsConnection() throws Exception {
    Path file = directory.resolve(SqliteStore.FILE_NAME);
    SqliteStore.open(directory, QUICK).close();
    Readers readers = new Readers(file, 1);
    List<Connection> lent = new ArrayList<>();
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch end = new CountDownLatch(1);
    Thread slow = new Thread(() -> readers.read(c -> lent.add(c) && waited(begun, end)));
    slow.start();
    begun.await();
    assertThrows(StoreException.class, readers::close);
    end.countDown();
    slow.join();
    assertTrue(lent.get(0).isClosed());
  }

  private static Thread reader(SqliteStore store, CountDownLatch end) throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    Thread slow = new Thread(() -> store.database().read(connection -> waited(begun, end)));
    slow.start();
    begun.await();
    return slow;
  }

  private static boolean waited(CountDownLatch begun, CountDownLatch until) {
    begun.countDown();
    try {
      until.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return true;
  }

  private static void limitPages(SqliteStore store, long more) {
    long pages = store.database().read(connection -> Sql.number(connection, "PRAGMA page_count"));
    FullDisk.limit(store, pages + more);
  }

  private static List<CompletableFuture<Reading>> append(
      SqliteStore store, Reading like, int first, int last) {
    List<CompletableFuture<Reading>> all = new ArrayList<>();
    for (int i = first; i <= last; i++) {
      all.add(store.readings().append(Some.reading("A", i, like.jobId(), like.setUpId())));
    }
    return all;
  }

  /** Random bytes over the second half of the file; what it then holds. */
  private static byte[] scribble(Path file) throws Exception {
    byte[] noise = new byte[(int) (Files.size(file) / 2)];
    new Random(7).nextBytes(noise);
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.wrap(noise), Files.size(file) / 2);
    }
    return Files.readAllBytes(file);
  }
}
