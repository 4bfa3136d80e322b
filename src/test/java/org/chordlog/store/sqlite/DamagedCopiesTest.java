package org.chordlog.store.sqlite;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.chordlog.store.sqlite.DamagedCopies.Outcome;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.io.TempDirFactory;

/** The short form of {@link DamagedCopies}: the file of a killed service, damaged and started. */
@Tag("slow")
final class DamagedCopiesTest {
  private static final int FLIPS = 24;
  private static final int CUTS = 8;

  @TempDir(factory = TempDirFactory.Standard.class)
  Path folder;

  private DamagedCopies copies;

  @BeforeEach
  void killed() throws Exception {
    copies = new DamagedCopies(DamagedCopies.killed(folder), folder.resolve("copy"), 17);
  }

  @Test
  void aFlippedBitIsSaidOrTheDataAreEqual() throws Exception {
    copies.flips(FLIPS);
    assertEquals(List.of(), copies.unsaid);
    assertTrue(copies.counts.getOrDefault(Outcome.SAID, 0) > 0, copies.counts::toString);
  }

  @Test
  void aCutJournalIsSaid() throws Exception {
    copies.cuts(CUTS);
    assertEquals(CUTS, copies.counts.get(Outcome.SAID), copies.counts::toString);
  }
}
