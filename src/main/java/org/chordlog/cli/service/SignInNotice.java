package org.chordlog.cli.service;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.chordlog.file.FileTrouble;
import org.chordlog.measure.BadInput;

/** What people read before they sign in, as who may and what is recorded. */
final class SignInNotice {
  static final String OPTION = "--sign-in-notice";
  private static final int MOST = 2_000;
  private static final String ALLOWED = "text in UTF-8 of 1 to " + MOST + " characters";

  private SignInNotice() {}

  /** {@link BadInput} where it can't be read, is empty, too long, or no text. */
  static String read(Path file) {
    String text = content(file).replace("\r\n", "\n").strip();
    if (text.isEmpty() || text.length() > MOST) {
      throw new BadInput(OPTION, file, text.isEmpty() ? "is empty" : "is too long", ALLOWED);
    }
    if (text.codePoints().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\t')) {
      throw new BadInput(OPTION, file, "holds control characters", ALLOWED);
    }
    return text;
  }

  private static String content(Path file) {
    try {
      return Files.size(file) > 4L * MOST ? "x".repeat(MOST + 1) : Files.readString(file);
    } catch (IOException e) {
      throw new BadInput(OPTION, file, FileTrouble.reading(file, e), ALLOWED);
    }
  }
}
