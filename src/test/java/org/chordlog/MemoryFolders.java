package org.chordlog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Folders of tests in the file system that Linux keeps in memory, where there is room for all: each
 * commit of a database waits for the disk, some milliseconds each, and all tests together wait for
 * minutes. What a program leaves that is killed is the same in both; still, tests of that name the
 * disk: {@code @TempDir(factory = TempDirFactory.Standard.class)}. The integration tests use the
 * disk.
 */
public final class MemoryFolders implements TempDirFactory {
  private static final Path MEMORY = Path.of("/dev/shm");
  private static final long ENOUGH_BYTES = 4L << 30;

  @Override
  public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext test)
      throws IOException {
    return create("junit");
  }

  /** A new folder, in memory where there is room. */
  public static Path create(String prefix) throws IOException {
    return roomy() ? Files.createTempDirectory(MEMORY, prefix) : Files.createTempDirectory(prefix);
  }

  /** Whether there is such a file system with at least 4 GiB left. */
  public static boolean roomy() {
    try {
      return Files.isWritable(MEMORY)
          && Files.getFileStore(MEMORY).getUsableSpace() >= ENOUGH_BYTES;
    } catch (IOException none) {
      return false;
    }
  }
}
