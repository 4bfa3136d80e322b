package org.chordlog.report;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Job;
import org.chordlog.measure.Specification;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.verdict.Words;

/** What was made, what was asked for, and how it came out. */
final class FrontSection {
  private FrontSection() {}

  static void write(JobReport report, Paper paper) {
    Job job = report.job();
    paper.title(job.name(), "Job report · radius of roll-bent pieces" + part(job));
    paper.facts(outcome(report), 5);
    paper.heading("Order and specification");
    paper.facts(order(report), 4);
  }

  private static String part(Job job) {
    return job.part().isBlank() ? "" : " · " + job.part();
  }

  private static List<Paper.Fact> outcome(JobReport report) {
    List<Paper.Fact> facts = new ArrayList<>();
    facts.add(new Paper.Fact("Readings", String.valueOf(report.readingCount())));
    if (!report.summaries().isEmpty()) {
      Summary first = report.summaries().get(0);
      for (String name : List.of("mean", "standardDeviationOverall", "Cp", "Cpk")) {
        first.figure(name).ifPresent(figure -> facts.add(fact(figure)));
      }
    }
    for (Decision decision : Decision.values()) {
      long count = report.readings().stream().filter(r -> r.decision() == decision).count();
      if (count > 0) {
        facts.add(new Paper.Fact(Print.of(decision), count + " of " + report.readings().size()));
      }
    }
    return facts;
  }

  private static Paper.Fact fact(Figure figure) {
    String unit = figure.unit().isEmpty() ? "" : " " + figure.unit();
    String value =
        figure.value() == null ? Print.NONE : Print.figure(figure, figure.value()) + unit;
    return new Paper.Fact(figure.kind().title(), value);
  }

  private static List<Paper.Fact> order(JobReport report) {
    Job job = report.job();
    Specification asked = job.specification();
    return List.of(
        new Paper.Fact("Part", job.part().isBlank() ? Print.NONE : job.part()),
        new Paper.Fact("Section", Print.of(job.section())),
        new Paper.Fact(
            "Material lot", job.materialLot().isBlank() ? Print.NONE : job.materialLot()),
        new Paper.Fact("Machine", job.machine()),
        new Paper.Fact("Specified on", Words.of(asked.face())),
        new Paper.Fact("Target radius", Print.asked(asked.targetMm())),
        new Paper.Fact("Lower limit (LSL)", Print.asked(asked.lowerLimitMm())),
        new Paper.Fact("Upper limit (USL)", Print.asked(asked.upperLimitMm())),
        new Paper.Fact("Measured on", Words.of(job.measuredFace())),
        new Paper.Fact("Positions", String.join(", ", job.plan().positions())),
        new Paper.Fact("Subgroups", Words.of(job.plan().subgroups())),
        new Paper.Fact("Opened", Print.time(job.openedAtMicros(), report.zone())));
  }
}
