package org.chordlog.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Why a file can't be written, in words and not by the name of an exception. */
public final class FileTrouble {
  private FileTrouble() {}

  /** A part of a sentence; the system's own words where it has some. */
  public static String of(IOException e) {
    if (e instanceof NoSuchFileException) {
      return "its folder does not exist";
    }
    if (e instanceof AccessDeniedException) {
      return "this user may not write there";
    }
    if (e instanceof FileAlreadyExistsException) {
      return "a file of that name stands in the way";
    }
    String reason = e instanceof FileSystemException other ? other.getReason() : e.getMessage();
    return reason == null ? e.toString() : reason;
  }
}
