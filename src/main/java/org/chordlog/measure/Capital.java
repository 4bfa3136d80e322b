package org.chordlog.measure;

import java.util.Locale;

/** Words that begin a sentence. */
public final class Capital {
  private Capital() {}

  /** The same with a large first letter; of nothing, nothing. */
  public static String of(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }
}
