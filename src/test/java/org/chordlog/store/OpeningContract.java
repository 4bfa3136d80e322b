package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.Await;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.junit.jupiter.api.Test;

/** How a store is opened, copied, put back and checked. */
public abstract class OpeningContract extends StoreContract {
  protected OpeningContract(Opener opener) {
    super(opener);
  }

  @Test
  void aSecondWriterIsRefused() {
    BadInput e = assertThrows(BadInput.class, () -> open(directory, Some.KEEPING_ALL));
    assertEquals("data", e.faults().get(0).field());
    assertEquals("", store.health().fault());
    assertTrue(store.health().writable());
  }

  @Test
  void aDirectoryThatIsAFileIsRefused() throws IOException {
    Path file = Files.writeString(directory.resolve("file"), "x");
    BadInput e = assertThrows(BadInput.class, () -> open(file, Some.KEEPING_ALL));
    assertEquals("data", e.faults().get(0).field());
  }

  @Test
  void aReaderBesideTheWriterSeesWhatWasAcknowledgedAndChangesNothing() {
    Reading like = Kept.first(store);
    try (Store reader = openForReading(directory)) {
      Reading kept = store.readings().append(like).join();
      assertEquals(kept, reader.readings().find(kept.id()).orElseThrow());
      assertFalse(reader.health().writable());
      assertThrows(StoreException.class, () -> reader.jobs().add(Some.job("K", "M"), "me"));
      CompletionException e =
          assertThrows(CompletionException.class, () -> reader.readings().append(like).join());
      assertTrue(e.getCause() instanceof StoreException, e::toString);
    }
  }

  @Test
  void readingFromADirectoryWithoutAStoreIsRefused() {
    assertThrows(BadInput.class, () -> openForReading(directory.resolve("none")));
    assertFalse(files(directory.resolve("none")).exist());
    assertTrue(files(directory).exist());
  }

  @Test
  void aClosedStoreRefusesEverything() {
    Reading like = Kept.first(store);
    store.close();
    assertThrows(StoreException.class, () -> store.jobs().add(Some.job("K", "M"), "me"));
    assertThrows(StoreException.class, () -> store.readings().lastId());
    assertThrows(CompletionException.class, () -> store.readings().append(like).join());
  }

  /** Whoever appends while it closes is told whether the reading is stored, and that is so. */
  @Test
  void everyAppendIsAnsweredWhereTheStoreCloses() throws Exception {
    Reading like = Kept.first(store);
    List<CompletableFuture<Reading>> appended = new ArrayList<>();
    Thread station = new Thread(() -> appendUntilRefused(like, appended));
    station.start();
    Await.until(() -> store.readings().lastSequence(like.station()) > 20);
    store.close();
    station.join();
    for (CompletableFuture<Reading> each : appended) {
      Await.until(each::isDone);
    }
    try (Store reader = openForReading(directory)) {
      assertEquals(
          appended.stream().filter(each -> !each.isCompletedExceptionally()).count(),
          reader.readings().countOfJob(like.jobId()));
    }
  }

  private void appendUntilRefused(Reading like, List<CompletableFuture<Reading>> appended) {
    do {
      appended.add(
          store
              .readings()
              .append(
                  Some.reading(like.station(), 1 + appended.size(), like.jobId(), like.setUpId())));
    } while (!appended.get(appended.size() - 1).isCompletedExceptionally());
  }

  @Test
  void aBackupTakenWhileOpenHoldsEverythingAcknowledged() {
    Reading kept = store.readings().append(Kept.first(store)).join();
    Path target = directory.resolve("copy.db");
    assertEquals(Optional.empty(), files(directory).lastBackupMicros());
    files(directory).backup(target);
    long noted = files(directory).lastBackupMicros().orElseThrow();
    assertTrue(Math.abs(noted - 1_000 * System.currentTimeMillis()) < 60_000_000L);
    Path other = directory.resolve("other");
    assertEquals(new StoreFiles.Restored(Optional.empty(), true), files(other).restore(target));
    assertEquals(List.of(), files(other).audit());
    try (Store copy = open(other, Some.KEEPING_ALL)) {
      assertEquals(List.of(kept), copy.readings().all(0, 10));
    }
  }

  @Test
  void aBackupOverwritesNothing() throws IOException {
    Path target = Files.writeString(directory.resolve("there.db"), "precious");
    BadInput e = assertThrows(BadInput.class, () -> files(directory).backup(target));
    assertEquals("target", e.faults().get(0).field());
    assertEquals("precious", Files.readString(target));
  }

  @Test
  void whatARestoreReplacesIsMovedAside() throws IOException {
    Kept.first(store);
    Path target = directory.resolve("copy.db");
    files(directory).backup(target);
    store.jobs().add(Some.job("lost", "M"), "me");
    assertThrows(BadInput.class, () -> files(directory).restore(target), "while it is open");
    store.close();
    Path aside = files(directory).restore(target).setAside().orElseThrow();
    assertTrue(Files.isDirectory(aside));
    open();
    assertEquals(1, store.jobs().list(Long.MAX_VALUE, 10).size());
  }

  @Test
  void whatIsNoBackupIsNotRestored() throws IOException {
    Path none = Files.writeString(directory.resolve("none.db"), "no backup".repeat(1_000));
    BadInput e = assertThrows(BadInput.class, () -> files(directory).restore(none));
    assertEquals("backup", e.faults().get(0).field());
    assertThrows(BadInput.class, () -> files(directory).restore(directory.resolve("absent")));
  }
}
