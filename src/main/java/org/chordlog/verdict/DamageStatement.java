package org.chordlog.verdict;

/** What is said of a station whose records can't be judged, while the others are. */
public final class DamageStatement {
  private DamageStatement() {}

  public static Statement of(String why) {
    return new Statement(
        Tone.BAD,
        "Records damaged",
        "What belongs to this station can't be judged: " + why + ".",
        "Readings are still taken and stored. Run 'chordlog audit' and restore a backup.");
  }
}
