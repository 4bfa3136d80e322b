package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;

/** Folders and files that only the user of the service may read. */
final class OwnFiles {
  private OwnFiles() {}

  /** Those that are there keep their permissions. */
  static void createDirectories(Path directory) throws IOException {
    if (!Files.isDirectory(directory)) {
      Files.createDirectories(directory, permissions(directory, "rwx------"));
    }
  }

  /** An empty file where there is none; SQLite gives its journal the same permissions. */
  static void create(Path file) throws IOException {
    if (Files.notExists(file)) {
      Files.createFile(file, permissions(file, "rw-------"));
    }
  }

  private static FileAttribute<?>[] permissions(Path path, String wanted) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(wanted))
        }
        : new FileAttribute<?>[0];
  }
}
