package org.chordlog.measure;

/** An event of a job taken back because it was recorded by mistake; append-only. */
public record EventWithdrawal(long id, long eventId, String reason, long atMicros, String by) {
  public EventWithdrawal {
    Check.text("reason", reason);
  }
}
