package org.chordlog.cli.common;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/**
 * A file that a command writes: it has its name only when it is whole, so that a full disk leaves
 * nothing half written, and it never takes the place of a file in the data directory or of a
 * database.
 */
public final class OutputFile {
  /** How such a file begins (sqlite.org/fileformat.html, 1.2). */
  private static final byte[] SQLITE = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private OutputFile() {}

  /** What is written into it. */
  public interface Content {
    void write(OutputStream out) throws IOException;
  }

  /** Writes the file that the option names; {@link BadInput} names it where that can't be. */
  public static void write(String option, Path file, Path data, Content content) {
    try {
      Path target = target(file);
      refuseData(option, file, target, data);
      refuseDatabase(option, file, target);
      put(target, content);
    } catch (IOException e) {
      throw unwritable(option, file, e);
    }
  }

  /** The same where no data directory is in play. */
  public static void write(String option, Path file, Content content) {
    try {
      Path target = target(file);
      refuseDatabase(option, file, target);
      put(target, content);
    } catch (IOException e) {
      throw unwritable(option, file, e);
    }
  }

  /** A pipe has no other name than that by which the shell gave it. */
  private static Path target(Path file) throws IOException {
    return Files.isRegularFile(file) ? file.toRealPath() : file.toAbsolutePath();
  }

  private static BadInput unwritable(String option, Path file, IOException e) {
    return new BadInput(option, file, FileTrouble.writing(e), "a file that can be written");
  }

  private static void refuseData(String option, Path file, Path target, Path data)
      throws IOException {
    if (Files.exists(target) && Files.exists(data) && target.startsWith(data.toRealPath())) {
      throw new BadInput(
          option, file, "is a file of the data directory", "a new file, or one somewhere else");
    }
  }

  /** Such as a backup, whose name a hurried finger completed. */
  private static void refuseDatabase(String option, Path file, Path target) throws IOException {
    if (Files.isRegularFile(target) && Arrays.equals(SQLITE, start(target))) {
      throw new BadInput(
          option, file, "is a database, perhaps a backup", "a new file, or one of another kind");
    }
  }

  private static byte[] start(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return in.readNBytes(SQLITE.length);
    }
  }

  private static void put(Path target, Content content) throws IOException {
    if (Files.exists(target) && !Files.isRegularFile(target)) {
      into(target, content, StandardOpenOption.WRITE);
    } else {
      whole(target, content);
    }
  }

  private static void whole(Path target, Content content) throws IOException {
    Path part =
        target.resolveSibling(target.getFileName() + "." + ProcessHandle.current().pid() + ".part");
    try {
      into(part, content, StandardOpenOption.CREATE_NEW);
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static void into(Path file, Content content, StandardOpenOption way) throws IOException {
    try (OutputStream out = Files.newOutputStream(file, StandardOpenOption.WRITE, way)) {
      content.write(out);
    }
  }
}
