package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.chordlog.Await;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.store.Kept;
import org.chordlog.store.Some;
import org.chordlog.store.StoreException;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What those who wait for the writer are told when something takes long or goes wrong in it. */
final class WriterTest {
  private static final String LONGER = "UPDATE job SET name = name || '+'";
  private static final String NAME = "SELECT name FROM job";

  @TempDir Path directory;

  private Path file;
  private Reading like;

  @BeforeEach
  void makeDatabase() {
    file = directory.resolve(SqliteStore.FILE_NAME);
    try (SqliteStore store = SqliteStore.open(directory, Some.QUICK)) {
      like = Kept.first(store);
    }
  }

  @Test
  void aChangeUnderWayForLongMayStillBeKept() throws Exception {
    try (Connection connection = Connections.writer(file);
        Writing writing = writing(connection, new Sealer(connection))) {
      CountDownLatch late = new CountDownLatch(1);
      StoreException e =
          assertThrows(StoreException.class, () -> writing.writer().call(longer(late), 1));
      late.countDown();
      assertEquals(
          "the store did not finish within 1 s, and the change may still be kept: look whether it"
              + " is there before you try again",
          e.getMessage());
      assertEquals("J+", name(writing));
    }
  }

  @Test
  void aChangeThatStillWaitsIsTakenBack() throws Exception {
    try (Connection connection = Connections.writer(file);
        Writing writing = writing(connection, new Sealer(connection))) {
      CountDownLatch late = new CountDownLatch(1);
      CountDownLatch begun = new CountDownLatch(1);
      Thread first = new Thread(() -> writing.call(c -> waited(begun, late)));
      first.start();
      begun.await();
      StoreException e =
          assertThrows(
              StoreException.class, () -> writing.writer().call(c -> Sql.update(c, LONGER), 1));
      late.countDown();
      first.join();
      assertTrue(String.valueOf(e.getMessage()).startsWith("not done: "), e::toString);
      assertEquals("J", name(writing));
    }
  }

  /** Whoever closes does not wait for it: its thread is interrupted. */
  @Test
  void whatIsCommittedAfterTheEndIsStillTold() throws Exception {
    try (Connection connection = Connections.writer(file);
        Writing writing = writing(connection, new Sealer(connection))) {
      CountDownLatch late = new CountDownLatch(1);
      CountDownLatch begun = new CountDownLatch(1);
      CompletableFuture<Boolean> told =
          CompletableFuture.supplyAsync(() -> writing.call(c -> waited(begun, late)));
      begun.await();
      CompletableFuture<Reading> after = append(writing, 1);
      Thread closing = new Thread(() -> closedAtOnce(writing));
      closing.start();
      closing.join();
      late.countDown();
      assertTrue(told.get(5, TimeUnit.SECONDS));
      assertEquals(1, after.get(5, TimeUnit.SECONDS).id());
      assertEquals("", writing.meter().fault());
    }
  }

  private static void closedAtOnce(Writing writing) {
    Thread.currentThread().interrupt();
    writing.writer().close();
  }

  @Test
  void anErrorOfOneTaskDoesNotEndTheThreadThatWrites() throws Exception {
    try (Connection connection = Connections.writer(file);
        Writing writing = writing(connection, new Sealer(connection))) {
      StoreException e =
          assertThrows(StoreException.class, () -> writing.writer().call(WriterTest::tooDeep, 5));
      assertTrue(String.valueOf(e.getMessage()).startsWith("not stored: "), e::toString);
      assertEquals("J", name(writing));
      assertEquals(1, append(writing, 1).join().id());
    }
  }

  private static boolean tooDeep(Connection connection) {
    throw new StackOverflowError();
  }

  /** Of a check, so that no total of its job is written, which would fail once more. */
  @Test
  void aReadingIsSealedOnceThoughTheStatementsCouldNotBePreparedAgain() throws Exception {
    AtomicBoolean failing = new AtomicBoolean();
    try (Connection connection = Connections.writer(file)) {
      Connection faulty = faulty(connection, failing);
      try (Writing writing = writing(faulty, failsOnce(faulty, () -> failing.set(true)))) {
        Reading check = like.withCircumstances(like.circumstances().withKind(ReadingKind.CHECK));
        assertEquals(1, writing.append(check, List.of()).join().id());
      }
    }
    assertFalse(failing.get());
    assertEquals(List.of(), audit());
  }

  @Test
  void aReadingAtWhichTheProgramFailsIsGivenUpAndOthersAreKept() throws Exception {
    AtomicBoolean failing = new AtomicBoolean(true);
    try (Connection connection = Connections.writer(file);
        Writing writing = writing(connection, failsAtReading(connection, 2, failing))) {
      List<CompletableFuture<Reading>> all =
          IntStream.rangeClosed(1, 3).mapToObj(i -> append(writing, i)).toList();
      Await.until(() -> all.stream().allMatch(CompletableFuture::isDone));
      assertEquals(1, all.get(0).join().id());
      CompletionException e = assertThrows(CompletionException.class, () -> all.get(1).join());
      assertTrue(e.toString().contains("not stored: the program has a fault"), e::toString);
      assertEquals(2, all.get(2).join().id());
      assertEquals(2, writing.meter().counts().committedReadings());
      assertEquals(1, writing.meter().counts().droppedReadings());
    }
    assertEquals(List.of("station A: 2 readings between sequence 1 and 3"), audit());
  }

  @Test
  void whereTheProgramFailsAtEveryCommitReadingsWaitAndItIsSaid() throws Exception {
    AtomicBoolean failing = new AtomicBoolean(true);
    try (Connection connection = Connections.writer(file);
        Writing writing = writing(connection, failsWhile(connection, failing))) {
      CompletableFuture<Reading> waiting = append(writing, 1);
      Await.until(() -> writing.meter().fault().contains("the program has a fault"));
      StoreException e =
          assertThrows(StoreException.class, () -> writing.call(c -> Sql.update(c, LONGER)));
      assertTrue(String.valueOf(e.getMessage()).contains("the program has a fault"), e::toString);
      assertFalse(waiting.isDone());
      failing.set(false);
      assertEquals(1, waiting.join().id());
      assertEquals("J", name(writing));
      assertEquals("", writing.meter().fault());
    }
    assertEquals(List.of(), audit());
  }

  private CompletableFuture<Reading> append(Writing writing, int sequence) {
    return writing.append(Some.reading("A", sequence, like.jobId(), like.setUpId()), List.of());
  }

  private List<String> audit() {
    return new SqliteFiles(directory).audit();
  }

  private static Sealer failsAtReading(Connection connection, long at, AtomicBoolean failing)
      throws Exception {
    return new Sealer(connection) {
      @Override
      void reading(long id, byte[] rowHash) {
        if (id == at && failing.getAndSet(false)) {
          throw new IllegalStateException("a fault");
        }
        super.reading(id, rowHash);
      }
    };
  }

  private static Sealer failsWhile(Connection connection, AtomicBoolean failing) throws Exception {
    return new Sealer(connection) {
      @Override
      void flush() throws SQLException {
        if (failing.get()) {
          throw new IllegalStateException("a fault");
        }
        super.flush();
      }
    };
  }

  /** Does that before the first entry, which then fails. */
  private static Sealer failsOnce(Connection connection, Runnable before) throws Exception {
    return new Sealer(connection) {
      private boolean failed;

      @Override
      void flush() throws SQLException {
        if (!failed) {
          failed = true;
          before.run();
          throw new SQLException("the disk fails once");
        }
        super.flush();
      }
    };
  }

  /** Where it is to, prepares one statement for totals not. */
  private static Connection faulty(Connection connection, AtomicBoolean failing) {
    InvocationHandler handler =
        (proxy, method, arguments) -> {
          boolean ofTotals =
              method.getName().equals("prepareStatement")
                  && arguments[0].toString().startsWith("INSERT INTO job_total");
          if (ofTotals && failing.getAndSet(false)) {
            throw new SQLException("the disk fails again");
          }
          return method.invoke(connection, arguments);
        };
    return (Connection)
        Proxy.newProxyInstance(
            Connection.class.getClassLoader(), new Class<?>[] {Connection.class}, handler);
  }

  private static Sql.Body<Integer> longer(CountDownLatch late) {
    return connection -> {
      waited(new CountDownLatch(1), late);
      return Sql.update(connection, LONGER);
    };
  }

  private static String name(Writing writing) {
    return writing.call(c -> Sql.first(c, NAME, row -> row.getString(1))).orElseThrow();
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

  private Writing writing(Connection connection, Sealer sealer) throws Exception {
    long run = Sql.insert(connection, "INSERT INTO run (started_micros, version) VALUES (1, '')");
    return Writing.start(connection, run, Announced.open(file, connection), Some.QUICK, sealer);
  }
}
