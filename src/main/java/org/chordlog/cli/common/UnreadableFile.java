package org.chordlog.cli.common;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.chordlog.measure.BadInput;

/** Why a CSV file that was named can't be read, and what to check. */
public final class UnreadableFile {
  private UnreadableFile() {}

  /** {@code field}: the option or FILE that names it. The library's own text is the name alone. */
  public static BadInput of(String field, Path file, IOException e) {
    if (e instanceof NoSuchFileException) {
      return new BadInput(field, file, "does not exist", "a CSV file; check its name and folder");
    }
    if (Files.isDirectory(file)) {
      return new BadInput(field, file, "is a folder", "a CSV file");
    }
    if (e instanceof AccessDeniedException) {
      return new BadInput(field, file, "may not be read by this user", "a CSV file that may");
    }
    String why = e instanceof CharacterCodingException ? "it is not UTF-8" : e.toString();
    return new BadInput(field, file, "can't be read: " + why, "a CSV file in UTF-8");
  }
}
