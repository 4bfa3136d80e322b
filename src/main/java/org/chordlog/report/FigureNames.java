package org.chordlog.report;

import java.util.Locale;

/** Names of figures as printed. */
final class FigureNames {
  private FigureNames() {}

  /** {@code standardDeviationOverall} becomes "Standard deviation overall"; Cpk stays. */
  static String of(String name) {
    if (name.length() <= 1 || Character.isUpperCase(name.charAt(0))) {
      return name;
    }
    String words = name.replaceAll("(?<=[a-z])(?=[A-Z][a-z])", " ").toLowerCase(Locale.ROOT);
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
