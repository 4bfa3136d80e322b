package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** Moves files so that a power cut leaves the old state or the new one. */
final class SyncedFiles {
  private static final DateTimeFormatter NAME = DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmssSSS");

  private SyncedFiles() {}

  static void sync(Path path) throws IOException {
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
      channel.force(true);
    }
  }

  static void rename(Path from, Path to) throws IOException {
    Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
    Path directory = to.toAbsolutePath().getParent();
    if (directory != null) {
      sync(directory);
    }
  }

  /** The time of day in the names of what is set aside. */
  static String now() {
    return NAME.format(ZonedDateTime.now(ZoneOffset.UTC));
  }

  /** Moves a database and its WAL into a new folder beside it. */
  static Path setAside(Path file, String prefix) throws IOException {
    Path folder = Files.createDirectory(file.resolveSibling(prefix + now()));
    for (String end : List.of("", "-wal", "-shm")) {
      Path part = Path.of(file + end);
      if (Files.exists(part)) {
        Files.move(part, folder.resolve(part.getFileName()));
      }
    }
    return folder;
  }
}
