package org.chordlog.report;

import java.util.List;
import java.util.Map;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.GapWords;

/** On page one: excluded readings, and planned positions where pieces were not measured. */
final class LeftOutSection {
  private static final int MOST_REASONS = 5;
  private static final int LONGEST_REASON = 60;

  private LeftOutSection() {}

  static void write(JobReport report, Paper paper) {
    ReadingCounts tally = report.measured().tally();
    if (tally.excluded() > 0) {
      paper.text("! " + excluded(report, tally));
    }
    if (!tally.gaps().isEmpty()) {
      paper.text("! " + GapWords.of(tally.gaps()));
    }
    tally
        .unfinished()
        .ifPresent(each -> paper.text("The job goes on. So far: " + GapWords.of(each)));
  }

  /** With where they are listed, or with their reasons where not all are listed. */
  private static String excluded(JobReport report, ReadingCounts tally) {
    String count = GapWords.excluded(tally.excluded(), tally.readings() + tally.excluded());
    if (!report.printing().withReadings() || report.readings().size() < report.readingCount()) {
      return count + ": " + reasons(tally.reasons()) + ".";
    }
    return tally.excluded() == 1
        ? count + "; it is listed under Readings with its reason."
        : count + "; they are listed under Readings with their reasons.";
  }

  private static String reasons(Map<String, Long> counts) {
    List<String> said =
        counts.entrySet().stream()
            .sorted(Map.Entry.<String, Long>comparingByValue().reversed())
            .limit(MOST_REASONS)
            .map(each -> each.getValue() + " × “" + shortened(each.getKey()) + "”")
            .toList();
    int more = counts.size() - said.size();
    return String.join(", ", said)
        + (more == 0 ? "" : ", and for " + Counted.of(more, "other reason"));
  }

  private static String shortened(String reason) {
    return reason.codePointCount(0, reason.length()) <= LONGEST_REASON
        ? reason
        : reason.substring(0, reason.offsetByCodePoints(0, LONGEST_REASON - 1)).strip() + "…";
  }
}
