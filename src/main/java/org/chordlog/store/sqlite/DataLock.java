package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;
import org.jspecify.annotations.Nullable;

/**
 * Keeps a second process from writing to a data directory; the system frees the lock when the
 * process dies.
 */
final class DataLock {
  private final FileChannel channel;

  private DataLock(FileChannel channel) {
    this.channel = channel;
  }

  static DataLock take(Path directory) {
    return lock(directory, open(directory));
  }

  /** Closes the channel where it can't be locked. */
  static DataLock lock(Path directory, FileChannel channel) {
    if (tryLock(directory, channel) == null) {
      closeQuietly(channel);
      throw new BadInput(
          "data",
          directory,
          "is in use by another instance",
          "a directory of its own, or this one once that is stopped");
    }
    return new DataLock(channel);
  }

  private static FileChannel open(Path directory) {
    try {
      OwnFiles.createDirectories(directory);
      Path file = directory.resolve("chordlog.lock");
      OwnFiles.create(file);
      return FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw new BadInput(
          "data", directory, FileTrouble.writing(e), "a directory that can be written");
    }
  }

  private static @Nullable FileLock tryLock(Path directory, FileChannel channel) {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException e) {
      return null;
    } catch (IOException e) {
      closeQuietly(channel);
      throw new BadInput(
          "data",
          directory,
          "can't be locked: " + FileTrouble.reason(e),
          "a directory on a local disk");
    }
  }

  private static void closeQuietly(FileChannel channel) {
    try {
      channel.close();
    } catch (IOException e) {
      throw new IllegalStateException("the lock file does not close", e);
    }
  }

  void close() {
    closeQuietly(channel);
  }
}
