package org.chordlog.verdict;

import java.util.Locale;

/** A count with its noun. */
public final class Counted {
  private Counted() {}

  /** "1 reading", "3 readings": for nouns that take an s. */
  public static String of(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  /** "1 record", "12,345 records". */
  public static String grouped(long count, String noun) {
    return grouped(count) + " " + noun + (count == 1 ? "" : "s");
  }

  /** "12,345". */
  public static String grouped(long number) {
    return String.format(Locale.ROOT, "%,d", number);
  }

  /** "once", "twice", "3 times". */
  public static String times(long count) {
    return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
  }
}
