package org.chordlog.cli.common;

import java.util.Optional;
import java.util.stream.Stream;

/**
 * Words of a command with letters that Java could not read: it takes those of the shell's locale
 * alone, so in "C" no letter beyond ASCII. A name would be kept without them, a file not be found.
 */
public final class LostLetters {
  private static final char REPLACEMENT = '\uFFFD';

  private LostLetters() {}

  /** What to tell whoever typed the first such word; empty if there is none. */
  public static Optional<String> in(String... words) {
    return Stream.of(words)
        .filter(word -> word.indexOf(REPLACEMENT) >= 0)
        .findFirst()
        .map(
            word ->
                "'%s' has letters that the shell's locale (%s) does not have; allowed: letters in a"
                        .formatted(word, System.getProperty("native.encoding"))
                    + " locale for UTF-8, as with LC_ALL=C.UTF-8 before the command");
  }
}
