package org.chordlog.harness;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;

/** Directories of programs that are no tests and so have no temporary one. */
public final class Directories {
  private Directories() {}

  /**
   * Also where another process removes it at the same moment: of several, those that saw all of it
   * end well, and one at least does.
   */
  public static void delete(Path directory) throws IOException {
    for (Path path : deepestFirst(directory)) {
      Files.deleteIfExists(path);
    }
  }

  private static List<Path> deepestFirst(Path directory) throws IOException {
    try (var paths = Files.walk(directory)) {
      return paths.sorted(Comparator.reverseOrder()).toList();
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
