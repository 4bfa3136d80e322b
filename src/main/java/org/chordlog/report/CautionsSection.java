package org.chordlog.report;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Mark;
import org.chordlog.stats.Caution;
import org.chordlog.stats.Summary;

/** How far the figures can be trusted, before the figures. */
final class CautionsSection {
  private CautionsSection() {}

  static void write(JobReport report, Paper paper) {
    List<String> cautions = new ArrayList<>();
    for (Summary summary : report.summaries()) {
      for (Caution caution : summary.cautions()) {
        cautions.add(summary.characteristic() + ": " + caution.text());
      }
    }
    for (Mark mark : Mark.values()) {
      long count = report.readings().stream().filter(r -> r.marks().contains(mark)).count();
      if (count > 0) {
        cautions.add("readings marked '%2$s': %1$d".formatted(count, Print.of(mark)));
      }
    }
    if (!cautions.isEmpty()) {
      paper.heading("Cautions");
      cautions.stream().distinct().forEach(text -> paper.text("! " + text));
    }
  }
}
