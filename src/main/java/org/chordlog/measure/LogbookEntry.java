package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * One entry of a machine's log book: work that was done on the machine, when and by whom, and who
 * wrote it down. Append-only: an entry with a {@code correction} replaces the one that it names, or
 * takes it back.
 */
public record LogbookEntry(
    long id,
    String machine,
    Work work,
    Recorded done,
    @Nullable Correction correction,
    Recorded recorded) {
  /** What was done. */
  public enum Kind {
    ROLLER_CHANGED,
    BEARING_RENEWED,
    LUBRICATED,
    SET_STRAIGHT,
    OTHER
  }

  private static final int LONGEST = 200;
  private static final int LONGEST_NOTE = 1_000;

  /** A clock beside the service's may be ahead by so much. */
  private static final long AHEAD_MICROS = 60_000_000;

  /**
   * What was done, in words or figures; {@code roller}, {@code before} and {@code after} may be
   * empty. Work of kind OTHER says in {@code note} what it was.
   */
  public record Work(Kind kind, String roller, String before, String after, String note) {
    public Work {
      atMost("roller", roller, LONGEST);
      atMost("before", before, LONGEST);
      atMost("after", after, LONGEST);
      atMost("note", note, LONGEST_NOTE);
      if (kind == Kind.OTHER) {
        Check.text("note", note);
      }
    }
  }

  /** Which entry is corrected, and why; {@code withdraws}: the work was not done at all. */
  public record Correction(long entryId, String why, boolean withdraws) {
    public Correction {
      Check.text("why", why);
    }
  }

  public LogbookEntry {
    Check.text("machine", machine);
    atMost("doneBy", Check.text("doneBy", done.by()), LONGEST);
    if (done.atMicros() > recorded.atMicros() + AHEAD_MICROS) {
      throw new BadInput("doneAt", "", "is in the future", "a time that has passed");
    }
  }

  private static void atMost(String field, String text, int longest) {
    if (text.length() > longest) {
      throw new BadInput(field, text.length() + " characters", "is too long", "at most " + longest);
    }
  }

  /** Whether it tells of work that was done, and does not only take back another entry. */
  public boolean tellsOfWork() {
    return correction == null || !correction.withdraws();
  }

  /** The same under that id. */
  public LogbookEntry withId(long other) {
    return new LogbookEntry(other, machine, work, done, correction, recorded);
  }
}
