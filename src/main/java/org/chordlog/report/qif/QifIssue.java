package org.chordlog.report.qif;

import java.util.List;
import org.chordlog.measure.Check;

/** Something wrong in the statistics, as a broken run test, with the readings it was seen at. */
public record QifIssue(String says, List<Long> readingIds) {
  public QifIssue {
    Check.text("says", says);
    readingIds = List.copyOf(readingIds);
  }
}
