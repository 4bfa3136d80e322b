package org.chordlog.report;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.study.BudgetComparison;
import org.chordlog.verdict.StudyWords;

/** What a study examined and found, all on one page. */
final class StudySummarySection {
  private static final int MOST_CAUTIONS = 6;

  /** Of names in a row: more are counted only. */
  private static final int MOST_NAMES = 60;

  private final StudyReport report;
  private final PrintedLengths lengths;
  private final Paper paper;

  StudySummarySection(StudyReport report, Paper paper) {
    this.report = report;
    this.lengths = report.lengths();
    this.paper = paper;
  }

  void write() {
    GaugeStudy study = report.study();
    paper.title("Study of the gauge", cut(study.name()) + " · station " + study.station());
    paper.large(StudyWords.of(report.result().conclusion().verdict()));
    paper.text(lengths.said(report.result().conclusion().says()));
    BudgetComparison budget = report.found().budget();
    if (budget != null) {
      paper.text(budget.says());
    }
    paper.heading("Design");
    paper.facts(design(), 4);
    paper.heading("Gauge");
    paper.facts(gauge(), 4);
    paper.heading("Figures that decide");
    new StudyFiguresSection(report, paper).writeMain();
    cautions();
    paper.signatures("Carried out by", "Released by", "Date");
  }

  private List<Paper.Fact> design() {
    GaugeStudy study = report.study();
    GaugeStudy.Design of = study.design();
    Specification asked = study.subject().specification();
    List<Paper.Fact> facts = new ArrayList<>();
    facts.add(new Paper.Fact("Examined", StudyWords.of(of.kind())));
    facts.add(new Paper.Fact("Measured", report.result().design()));
    facts.add(new Paper.Fact(StudyWords.parts(of.kind()), names(of.parts())));
    facts.add(new Paper.Fact("Marked places", names(of.places())));
    facts.add(new Paper.Fact("Operators", names(of.operators())));
    facts.add(new Paper.Fact("Nominal", lengths.asked(asked.targetMm())));
    facts.add(new Paper.Fact("Limits", limits(asked)));
    facts.add(new Paper.Fact("Order drawn from", String.valueOf(of.seed())));
    facts.add(new Paper.Fact("First measurement", report.time(report.measured().firstMicros())));
    facts.add(new Paper.Fact("Last measurement", report.time(report.measured().lastMicros())));
    facts.add(new Paper.Fact("Planned by", cut(study.made().by())));
    return facts;
  }

  private String limits(Specification asked) {
    return asked.lowerLimitMm() == null && asked.upperLimitMm() == null
        ? Print.NONE
        : lengths.asked(asked.lowerLimitMm()) + " to " + lengths.asked(asked.upperLimitMm());
  }

  private static String names(List<String> all) {
    String joined = String.join(", ", all);
    return all.isEmpty()
        ? Print.NONE
        : joined.length() <= MOST_NAMES ? joined : all.size() + ": " + cut(joined);
  }

  private static String cut(String text) {
    return text.length() <= MOST_NAMES ? text : text.substring(0, MOST_NAMES - 1) + "…";
  }

  private List<Paper.Fact> gauge() {
    SetUp setUp = report.measured().setUp();
    Calibration calibration = setUp.calibration();
    return List.of(
        new Paper.Fact("Bridge", cut(setUp.bridge().name())),
        new Paper.Fact("Span, nominal", lengths.plain(setUp.bridge().spanMm())),
        new Paper.Fact("Indicator step", lengths.plain(setUp.indicator().resolutionMm())),
        new Paper.Fact(
            "Calibrated",
            calibration == null
                ? "no: nominal span used"
                : report.time(calibration.takenAtMicros())));
  }

  private void cautions() {
    List<String> cautions = report.result().cautions();
    cautions.stream().limit(MOST_CAUTIONS).forEach(text -> paper.text("! " + text));
    if (cautions.size() > MOST_CAUTIONS) {
      paper.text("! " + (cautions.size() - MOST_CAUTIONS) + " more on the study's page.");
    }
    paper.text(
        "Each verdict is by the whole 95 % interval: it passes or fails only where all of the"
            + " interval is on one side of the limit. Measure only with the rollers stopped and the"
            + " drive locked out; the machine's manual and local rules come first.");
  }
}
