package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Folders and files that only the user of the service may read. */
final class OwnFiles {
  private static final Logger LOG = LoggerFactory.getLogger(OwnFiles.class);

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
      giveToOwnerOfFolder(file);
    }
  }

  /**
   * A new file in a folder of another user, so that the service can read what a command of the
   * administrator's made there. Nothing where that may not be.
   */
  static void giveToOwnerOfFolder(Path file) {
    @Nullable PosixFileAttributeView made = view(file);
    @Nullable PosixFileAttributeView folder = view(file.toAbsolutePath().getParent());
    if (made == null || folder == null) {
      return;
    }
    try {
      PosixFileAttributes wanted = folder.readAttributes();
      if (!made.getOwner().equals(wanted.owner())) {
        made.setGroup(wanted.group());
        made.setOwner(wanted.owner());
      }
    } catch (IOException e) {
      LOG.atDebug().setCause(e).log("a file keeps the user who made it");
    }
  }

  private static @Nullable PosixFileAttributeView view(@Nullable Path path) {
    return path == null
        ? null
        : Files.getFileAttributeView(path, PosixFileAttributeView.class, LinkOption.NOFOLLOW_LINKS);
  }

  private static FileAttribute<?>[] permissions(Path path, String wanted) {
    return path.getFileSystem().supportedFileAttributeViews().contains("posix")
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(wanted))
        }
        : new FileAttribute<?>[0];
  }
}
