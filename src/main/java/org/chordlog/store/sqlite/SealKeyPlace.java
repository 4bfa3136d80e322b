package org.chordlog.store.sqlite;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/**
 * Where the key of the seal is: beside the database, or where the file of that name beside it says,
 * so that whoever may write the data can't sign with it.
 */
final class SealKeyPlace {
  static final String FILE_NAME = "seal-key-place.txt";

  private SealKeyPlace() {}

  /** The file of the key, which need not exist beside the database, and has to elsewhere. */
  static Path of(Path database) throws IOException {
    Path told = told(database);
    if (Files.notExists(told)) {
      return database.resolveSibling(SealKey.FILE_NAME);
    }
    Path key = Path.of(Files.readString(told).strip());
    if (!Files.isReadable(key)) {
      throw new BadInput(
          "seal key",
          key,
          "can't be read, and " + told + " says that it is there",
          "the key at that place, readable by this user");
    }
    return key;
  }

  private static Path told(Path database) {
    return database.resolveSibling(FILE_NAME);
  }

  /** {@link BadInput} where it should be elsewhere and is not. */
  static Path require(Path database) {
    try {
      return of(database);
    } catch (IOException e) {
      throw new BadInput(
          "seal key", told(database), FileTrouble.reading(told(database), e), "its path");
    }
  }

  /** From now on there; a key that is here is moved, one that is there is used. */
  static void move(Path directory, Path key) {
    Path place = key.toAbsolutePath().normalize();
    if (place.startsWith(directory.toAbsolutePath().normalize())) {
      throw new BadInput(
          "--seal-key", key, "is in the data directory", "a file outside of " + directory);
    }
    try {
      OwnFiles.createDirectories(directory);
      moveKey(require(directory.resolve(SqliteStore.FILE_NAME)), place);
      Path told = directory.resolve(FILE_NAME);
      OwnFiles.create(told);
      Files.writeString(told, place + "\n", StandardOpenOption.TRUNCATE_EXISTING);
      SyncedFiles.sync(told);
    } catch (IOException e) {
      throw new BadInput(
          "--seal-key", key, FileTrouble.writing(e), "a file in a folder of this user");
    }
  }

  /** Copied before it is removed: a power cut leaves one of them, or both. */
  private static void moveKey(Path from, Path to) throws IOException {
    if (from.equals(to)) {
      return;
    }
    if (Files.exists(to)) {
      requireSame(from, to);
    } else if (Files.exists(from)) {
      OwnFiles.create(to);
      Files.writeString(to, text(from), StandardCharsets.US_ASCII, StandardOpenOption.WRITE);
      SyncedFiles.sync(to);
    } else {
      SealKey.make(to);
    }
    Files.deleteIfExists(from);
  }

  /** Another key would end the row of checkpoints that one key signed. */
  private static void requireSame(Path from, Path to) {
    if (Files.exists(from) && !text(from).equals(text(to))) {
      throw new BadInput(
          "--seal-key", to, "is another key than " + from, "the same key, or a file not there yet");
    }
  }

  private static String text(Path key) {
    try {
      return Files.readString(key);
    } catch (IOException e) {
      throw new BadInput(
          "--seal-key", key, FileTrouble.reading(key, e), "a key's file that this user may read");
    }
  }
}
