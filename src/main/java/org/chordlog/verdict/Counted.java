package org.chordlog.verdict;

/** A count with its noun. */
public final class Counted {
  private Counted() {}

  /** "1 reading", "3 readings": for nouns that take an s. */
  public static String of(long count, String noun) {
    return count + " " + noun + (count == 1 ? "" : "s");
  }

  /** "once", "twice", "3 times". */
  public static String times(long count) {
    return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
  }
}
