package org.chordlog.harness;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class DirectoriesTest {
  private static final int REMOVERS = 4;

  @TempDir Path folder;

  /** As several runs of tests remove what a killed one left. */
  @Test
  void whereSeveralRemoveItOneAtLeastEndsWellAndNothingIsLeft() throws Exception {
    ExecutorService removers = Executors.newFixedThreadPool(REMOVERS);
    try {
      for (int round = 0; round < 20; round++) {
        Path left = filled("left-" + round);
        CyclicBarrier together = new CyclicBarrier(REMOVERS);
        List<Future<Boolean>> all = new ArrayList<>();
        for (int i = 0; i < REMOVERS; i++) {
          all.add(removers.submit(() -> removed(left, together)));
        }
        boolean well = false;
        for (Future<Boolean> each : all) {
          well |= each.get();
        }
        assertTrue(well);
        assertFalse(Files.exists(left));
      }
    } finally {
      removers.shutdownNow();
    }
  }

  private Path filled(String name) throws IOException {
    Path made = Files.createDirectory(folder.resolve(name));
    for (int i = 0; i < 100; i++) {
      Files.createFile(
          Files.createDirectories(made.resolve("part-" + i % 10)).resolve("file-" + i));
    }
    return made;
  }

  private static boolean removed(Path left, CyclicBarrier together) throws Exception {
    together.await();
    try {
      Directories.delete(left);
      return true;
    } catch (IOException another) {
      return false;
    }
  }
}
