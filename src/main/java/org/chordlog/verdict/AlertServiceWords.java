package org.chordlog.verdict;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Capital;

/** What looks for alerts and tells them, in words. */
public final class AlertServiceWords {
  private AlertServiceWords() {}

  /**
   * What is to be known of it, the most urgent first: whether anything looks for alerts, whether
   * they are told beyond the pages, and what could not be delivered, each without its full stop.
   */
  public static List<Statement> of(boolean watches, boolean channels, List<String> problems) {
    List<Statement> said = new ArrayList<>();
    if (!watches) {
      said.add(
          new Statement(
              Tone.BAD,
              "Nothing looks for alerts",
              "What is shown here may be out of date, and nothing new is raised.",
              "Restart the service and read its log."));
    }
    if (!problems.isEmpty()) {
      said.add(
          new Statement(
              Tone.BAD,
              "Not everybody is told",
              sentence(String.join("; ", problems)),
              "Tell them yourself, then run chordlog alerts --check to see which channel fails."));
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

  private static String sentence(String words) {
    return Capital.of(words) + ".";
  }
}
