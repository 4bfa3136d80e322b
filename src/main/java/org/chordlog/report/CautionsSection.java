package org.chordlog.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.stats.capability.Caution;
import org.chordlog.stats.capability.Summary;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.Words;

/** How far the figures can be trusted, before the figures. */
final class CautionsSection {
  private CautionsSection() {}

  static void write(JobReport report, Paper paper) {
    List<String> cautions = of(report);
    if (!cautions.isEmpty()) {
      paper.heading("Cautions");
      cautions.forEach(text -> paper.text("! " + text));
    }
  }

  /** Each said once. */
  static List<String> of(JobReport report) {
    List<String> cautions = new ArrayList<>();
    byText(report).forEach((text, names) -> cautions.add(String.join(", ", names) + " " + text));
    List<Reading> counting = report.measured().counting();
    for (Mark mark : Mark.values()) {
      long count = counting.stream().filter(r -> r.marks().contains(mark)).count();
      if (count > 0) {
        cautions.add("%s, marked: %s".formatted(Counted.of(count, "reading"), Words.of(mark)));
      }
    }
    return cautions.stream().distinct().toList();
  }

  /** Which characteristics each caution is of, and over which readings. */
  private static Map<String, List<String>> byText(JobReport report) {
    Map<String, List<String>> names = new LinkedHashMap<>();
    for (Summary summary : report.summaries()) {
      for (Caution caution : summary.cautions()) {
        names
            .computeIfAbsent(
                "(" + FiguresSection.over(summary) + "): " + report.lengths().said(caution.text()),
                any -> new ArrayList<>())
            .add(summary.characteristic());
      }
    }
    return names;
  }
}
