package org.chordlog.file;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;

/** Why a file can't be read or written, in words and not by the name of an exception. */
public final class FileTrouble {
  /** Of Linux and macOS, of a quota there, and of Windows. */
  private static final List<String> FULL =
      List.of(
          "No space left on device",
          "Disk quota exceeded",
          "There is not enough space on the disk");

  private FileTrouble() {}

  /** What is said of the file, as the problem of a {@code BadInput}. */
  public static String reading(Path file, IOException e) {
    if (e instanceof NoSuchFileException) {
      return "does not exist";
    }
    if (e instanceof CharacterCodingException) {
      return "is not text in UTF-8";
    }
    if (e instanceof AccessDeniedException) {
      return "may not be read by this user";
    }
    return Files.isDirectory(file) ? "is a folder" : "can't be read: " + reason(e);
  }

  /** What is said of the file, or of the folder that it belongs into. */
  public static String writing(IOException e) {
    return "can't be written: " + why(e);
  }

  private static String why(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "its folder does not exist";
    }
    if (e instanceof AccessDeniedException) {
      return "this user may not write there";
    }
    return e instanceof FileAlreadyExistsException
        ? "a file of that name stands in the way"
        : reason(e);
  }

  /** The system's own words where it has some, but for a disk that is full. */
  public static String reason(IOException e) {
    String reason = e instanceof FileSystemException other ? other.getReason() : e.getMessage();
    if (reason == null) {
      return e.toString();
    }
    return FULL.stream().anyMatch(reason::startsWith) ? "the disk is full" : reason;
  }
}
