package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.chordlog.Await;
import org.chordlog.measure.Sample;
import org.chordlog.store.Some;
import org.chordlog.store.StoreSettings;
import org.chordlog.store.sql.Sql;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Samples on their way to the disk, and their blocks there. */
final class TracesTest {
  private static final int BLOCK = 4_096;
  private static final StoreSettings HARDLY_ANY_ROUNDS =
      new StoreSettings(20, 20, 50, 3_600_000, 0, StoreSettings.USUAL.traceFreeBytes());

  @TempDir Path directory;

  /** Six times what may wait, handed over as fast as it is taken. */
  @Test
  void aDeviceThatIsFasterThanTheDiskWaits() throws Exception {
    long last = 6L * TraceWriter.CAPACITY / BLOCK * BLOCK;
    try (SqliteStore store = SqliteStore.open(directory, Some.KEEPING_ALL)) {
      for (long sequence = 0; sequence < last; sequence += BLOCK) {
        assertTrue(store.traces().append("A", samples(sequence, BLOCK)), "at " + sequence);
      }
      Await.until(() -> store.health().counts().keptSamples() == last);
      assertEquals(0, store.health().counts().droppedSamples());
      assertEquals(last, store.traces().lastSequence("A"));
    }
  }

  @Test
  void smallBlocksAreJoinedWithEverySampleInThem() throws Exception {
    int piece = 128;
    List<Sample> all = new ArrayList<>();
    try (SqliteStore store = SqliteStore.open(directory, Some.QUICK)) {
      while (all.size() < 2 * TraceMerger.ENOUGH_SAMPLES) {
        List<Sample> samples = samples(all.size(), piece);
        assertTrue(store.traces().append("A", samples));
        all.addAll(samples);
        long last = all.size();
        Await.until(() -> store.traces().lastSequence("A") == last);
      }
      Await.until(() -> blocks(store, "merged = 1") > 0);
      assertTrue(blocks(store, "merged = 0") < 2 * TraceMerger.ENOUGH_SAMPLES / piece);
      assertEquals(all, store.traces().range("A", 1, all.size(), Integer.MAX_VALUE));
    }
  }

  /** A disk that falls behind commits a large block between small ones. */
  @Test
  void smallBlocksAreNotJoinedAcrossALargeOne() throws Exception {
    List<Sample> all = new ArrayList<>();
    try (SqliteStore store = SqliteStore.open(directory, HARDLY_ANY_ROUNDS)) {
      for (int count : List.of(100, 100, TraceMerger.ENOUGH_SAMPLES, 100, 100)) {
        List<Sample> samples = samples(all.size(), count);
        assertTrue(store.traces().append("A", samples));
        all.addAll(samples);
        Await.until(() -> store.traces().lastSequence("A") == all.size());
      }
      TraceMerger merger = new TraceMerger(store.database(), "A");
      merger.merge();
      merger.merge();
      assertEquals(3, blocks(store, "merged = 1"));
      for (long sequence = 1; sequence <= all.size(); sequence += 50) {
        assertEquals(1, store.traces().range("A", sequence, sequence, 9).size(), "at " + sequence);
      }
      assertEquals(all, store.traces().range("A", 1, all.size(), Integer.MAX_VALUE));
    }
  }

  private static long blocks(SqliteStore store, String which) {
    String count = "SELECT count(*) FROM trace_block WHERE " + which;
    return store.database().read(connection -> Sql.number(connection, count));
  }

  private static List<Sample> samples(long after, int count) {
    List<Sample> samples = new ArrayList<>();
    for (long i = after + 1; i <= after + count; i++) {
      samples.add(new Sample(i, i * 10_000_000, Some.T0 + i * 10_000, i % 90, 0, false));
    }
    return samples;
  }
}
