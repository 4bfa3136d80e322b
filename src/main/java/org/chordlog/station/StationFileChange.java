package org.chordlog.station;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.function.UnaryOperator;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/**
 * Changes a station file as a whole: one change at a time, among threads and among programs. The
 * new text is on the disk before it takes the place of the old one, with the old one's permissions;
 * where the name is a link, the file that it leads to is replaced.
 */
final class StationFileChange {
  private static final Object ONE = new Object();

  private StationFileChange() {}

  /** {@code change} gets the text there is ("" without a file) and gives the one to be. */
  static void of(Path file, UnaryOperator<String> change) {
    synchronized (ONE) {
      try {
        Path real = Files.exists(file) ? file.toRealPath() : file.toAbsolutePath();
        underLock(real, change);
      } catch (IOException e) {
        throw new BadInput(
            "config", file, FileTrouble.writing(e), "a file that this user may write");
      }
    }
  }

  /** The lock file stays: it is removed by nobody, so that all lock the same one. */
  private static void underLock(Path file, UnaryOperator<String> change) throws IOException {
    Path lock = file.resolveSibling("." + file.getFileName() + ".lock");
    try (FileChannel channel =
        FileChannel.open(lock, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      var unused = channel.lock(); // until the channel is closed
      String before = Files.exists(file) ? read(file) : "";
      replace(file, change.apply(before));
    }
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new BadInput("config", file, FileTrouble.reading(file, e), "a station file");
    }
  }

  private static void replace(Path file, String text) throws IOException {
    Path fresh = file.resolveSibling(file.getFileName() + ".new");
    try {
      Files.writeString(fresh, text);
      keepMode(file, fresh);
      sync(fresh, StandardOpenOption.WRITE);
      Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(fresh);
    }
    Path directory = file.getParent();
    if (directory != null) {
      sync(directory, StandardOpenOption.READ);
    }
  }

  private static void sync(Path path, StandardOpenOption way) throws IOException {
    try (FileChannel channel = FileChannel.open(path, way)) {
      channel.force(true);
    }
  }

  private static void keepMode(Path file, Path fresh) throws IOException {
    if (Files.exists(file) && Files.getFileStore(file).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(fresh, Files.getPosixFilePermissions(file));
    }
  }
}
