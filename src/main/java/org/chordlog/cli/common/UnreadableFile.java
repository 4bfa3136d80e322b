package org.chordlog.cli.common;

import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/** Why a CSV file that was named can't be read, and what to check. */
public final class UnreadableFile {
  private UnreadableFile() {}

  /** {@code field}: the option or FILE that names it. The library's own text is the name alone. */
  public static BadInput of(String field, Path file, IOException e) {
    String allowed =
        e instanceof NoSuchFileException
            ? "a CSV file; check its name and folder"
            : "a CSV file in UTF-8 that this user may read";
    return new BadInput(field, file, FileTrouble.reading(file, e), allowed);
  }
}
