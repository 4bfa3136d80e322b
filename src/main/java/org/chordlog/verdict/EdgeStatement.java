package org.chordlog.verdict;

import java.util.Optional;
import org.chordlog.measure.Sentence;

/**
 * Whether what a workshop computer has measured is at the plant, in words. {@code silentSeconds}:
 * since it last spoke; {@code trouble}: what it said to be wrong with its records, without a full
 * stop, empty where all is well; {@code clockAheadMillis}: its clock less the plant's.
 */
public record EdgeStatement(
    String name,
    Delivery delivery,
    long lastReadingId,
    long backlogRows,
    long silentSeconds,
    String trouble,
    long clockAheadMillis) {
  private static final long CLOCKS_AGREE_MILLIS = 2_000;
  private static final int MINUTE = 60;
  private static final int HOUR = 3_600;
  private static final int DAY = 86_400;
  private static final int FROM_TWO = 2;

  /** How far it is with what it has to deliver. */
  public enum Delivery {
    NOTHING_YET,
    COMPLETE,
    BEHIND,
    SILENT
  }

  public Statement statement() {
    return switch (delivery) {
      case NOTHING_YET ->
          said(
              Tone.OPEN,
              "Nothing delivered yet",
              Sentence.of("%s was added to the plant and has delivered nothing.", name),
              Sentence.of("At %s, chordlog forward --check says what is missing.", name));
      case SILENT ->
          said(
              Tone.BAD,
              "Silent",
              Sentence.of(
                  "Nothing was heard from %s for %s; what it measures meanwhile is kept there.",
                  name, time(silentSeconds)),
              Sentence.of("See whether %s is switched on, and on the network.", name));
      case BEHIND ->
          trouble.isEmpty()
              ? said(Tone.QUIET, "Catching up", waiting(), Sentence.EMPTY)
              : said(
                  Tone.OPEN,
                  "Behind, and in trouble",
                  Sentence.of("%s not here yet. %s says: %s.", rows(), name, trouble),
                  look());
      case COMPLETE -> trouble.isEmpty() ? complete() : inTrouble();
    };
  }

  private Statement complete() {
    return said(
        Tone.GOOD,
        "Complete",
        lastReadingId == 0
            ? Sentence.of("%s has delivered all its records, and no reading yet.", name)
            : Sentence.of(
                "All records of %s are here, up to reading %s.",
                name, Counted.grouped(lastReadingId)),
        Sentence.EMPTY);
  }

  private Statement inTrouble() {
    return said(
        Tone.OPEN,
        "In trouble",
        Sentence.of("All records of %s are here; it says: %s.", name, trouble),
        look());
  }

  private Sentence look() {
    return Sentence.of("At %s, the front page and /health say what to do.", name);
  }

  private Sentence waiting() {
    return Sentence.of("%s not here yet.", rows());
  }

  private String rows() {
    return backlogRows == 1
        ? "1 record of " + name + " is"
        : Counted.grouped(backlogRows, "record") + " of " + name + " are";
  }

  /** What is to be known of its clock; empty while the clocks agree within 2 s. */
  public Optional<Statement> clock() {
    long millis = Math.abs(clockAheadMillis);
    return millis <= CLOCKS_AGREE_MILLIS
        ? Optional.empty()
        : Optional.of(
            said(
                Tone.OPEN,
                "Clock is wrong",
                clock(clockAheadMillis / 1_000),
                Sentence.of("Set the clock of %s by a time server.", name)));
  }

  /** How far its clock is from the plant's. */
  static Sentence clock(long secondsAhead) {
    return Sentence.of(
        "Its clock is %s %s the plant's.",
        time(Math.abs(secondsAhead)), secondsAhead > 0 ? "ahead of" : "behind");
  }

  /** That its records began anew after that reading, and why. */
  public static Statement began(long afterReadingId, String why) {
    return said(
        Tone.QUIET,
        "Records began anew",
        Sentence.of(
            "After reading %s: %s. Nothing of the former history was overwritten.",
            Counted.grouped(afterReadingId), why),
        Sentence.EMPTY);
  }

  private static Statement said(Tone tone, String word, Sentence reason, Sentence advice) {
    return new Statement(tone, word, reason, advice);
  }

  /** In the unit that fits. */
  static String time(long seconds) {
    if (seconds >= FROM_TWO * DAY) {
      return seconds / DAY + " days";
    }
    if (seconds >= FROM_TWO * HOUR) {
      return seconds / HOUR + " hours";
    }
    return seconds >= FROM_TWO * MINUTE ? seconds / MINUTE + " minutes" : seconds + " seconds";
  }
}
