package org.chordlog.measure;

/** A reading taken out of the statistics (or put back), with the reason; append-only. */
public record Exclusion(
    long id, long readingId, boolean excluded, String reason, long atMicros, String by) {
  private static final String ROLLED_AGAIN = "Rolled again after pass ";

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
}
