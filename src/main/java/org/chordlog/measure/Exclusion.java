package org.chordlog.measure;

/** A reading taken out of the statistics (or put back), with the reason; append-only. */
public record Exclusion(
    long id, long readingId, boolean excluded, String reason, long atMicros, String by) {
  private static final String ROLLED_AGAIN = "Rolled again after pass ";
  private static final String BELONGS = "Belongs to job ";
  private static final String THERE = ": there as piece ";

  public Exclusion {
    Check.text("reason", reason);
  }

  /** The reason of a reading whose piece was rolled once more after that pass. */
  public static String rolledAgainAfter(int pass) {
    return ROLLED_AGAIN + pass;
  }

  /** Whether a later pass of its piece took the place of this reading. */
  public boolean rolledAgain() {
    return excluded && reason.startsWith(ROLLED_AGAIN);
  }

  /** The reason of a reading that was moved to the job it belongs to, and its piece there. */
  public static String belongsTo(String job, int piece) {
    return BELONGS + job + THERE + piece;
  }

  /** Whether that is the reason of a reading that was moved to another job. */
  public static boolean moved(String reason) {
    return reason.startsWith(BELONGS) && reason.contains(THERE);
  }

  /** Of a reading that was moved, the reason that all moved to that job have; else the same. */
  public static String ofAllMoved(String reason) {
    return moved(reason) ? reason.substring(0, reason.lastIndexOf(THERE)) : reason;
  }

  /** Whether it counts in another job, to which it was moved. */
  public boolean moved() {
    return excluded && moved(reason);
  }
}
