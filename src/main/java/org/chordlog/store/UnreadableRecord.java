package org.chordlog.store;

/**
 * A record that is stored but is not what it should be: a damaged reading, job or event. It is left
 * out of every answer, and nothing else is. {@code jobId} is the job it belongs to.
 */
public record UnreadableRecord(String what, long id, long jobId, String why) {
  /** For people. */
  public String sentence() {
    return "%s %s can't be read (%s) and is left out; 'chordlog audit' lists all that is damaged,"
            .formatted(what, id, why)
        + " a backup from before has it";
  }
}
