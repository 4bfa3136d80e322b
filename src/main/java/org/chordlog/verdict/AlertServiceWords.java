package org.chordlog.verdict;

import java.util.ArrayList;
import java.util.List;

/** What looks for alerts and tells them, in words. */
public final class AlertServiceWords {
  private AlertServiceWords() {}

  /**
   * What is to be known of it, the most urgent first: whether anything looks for alerts, whether
   * they are told beyond the pages, and how many messages could not be delivered.
   */
  public static List<Statement> of(boolean watches, boolean channels, long undelivered) {
    List<Statement> said = new ArrayList<>();
    if (!watches) {
      said.add(
          new Statement(
              Tone.BAD,
              "Nothing looks for alerts",
              "What stands here may be old, and nothing new is raised.",
              "Start the service anew, and read its log."));
    }
    if (undelivered > 0) {
      said.add(
          new Statement(
              Tone.BAD,
              "Not delivered: " + Counted.of(undelivered, "message"),
              "Those to whom they were sent do not know.",
              "Tell them, then run chordlog alerts --check to see which channel fails."));
    }
    if (!channels) {
      said.add(
          new Statement(
              Tone.OPEN,
              "Nobody is told by mail",
              "No mail server and no webhook is set up: alerts are on these pages only.",
              "Look here each shift."));
    }
    return said;
  }
}
