package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Sample;
import org.junit.jupiter.api.Test;

/** A store that keeps its data in a directory of its own: locked, copied, put back and checked. */
public abstract class FilesContract extends StoreContract {
  protected FilesContract(Opener opener) {
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
  void readingFromADirectoryWithoutAStoreIsRefused() {
    assertThrows(BadInput.class, () -> openForReading(directory.resolve("none")));
    assertFalse(files(directory.resolve("none")).exist());
    assertTrue(files(directory).exist());
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
    assertEquals("FILE", e.faults().get(0).field());
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
    assertEquals("FILE", e.faults().get(0).field());
    assertThrows(BadInput.class, () -> files(directory).restore(directory.resolve("absent")));
  }

  @Test
  void samplesKeptAndDroppedAreCounted() {
    Sample first = new Sample(300, 0, Some.T0, 10_000, 0, false);
    assertTrue(store.traces().append("A", List.of(first)));
    reopen();
    assertEquals(0, store.health().counts().droppedSamples());
    StoreSettings greedy = Some.KEEPING_ALL.withTraceFreeBytes(Long.MAX_VALUE);
    close();
    store = open(directory, greedy);
    Sample next = new Sample(301, 0, Some.T0, 10_000, 0, false);
    assertEquals(false, store.traces().append("A", List.of(next)));
    assertEquals(1, store.health().counts().droppedSamples());
    assertTrue(store.health().warnings().toString().contains("space"));
  }
}
