package org.chordlog.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.chordlog.measure.Decision;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Specification;
import org.chordlog.store.MeasuringPart;
import org.chordlog.store.SealTip;
import org.chordlog.verdict.Counted;
import org.chordlog.verdict.JobVerdict;
import org.chordlog.verdict.Statement;
import org.chordlog.verdict.Words;
import org.jspecify.annotations.Nullable;

/** Page one: what was ordered, what was measured, and the verdict, for a customer in a hurry. */
final class CertificateSection {
  private static final int MOST_NUMBERS = 8;
  private static final int MOST_CAUTIONS = 4;

  private final JobReport report;
  private final PrintedLengths lengths;
  private final Paper paper;

  private CertificateSection(JobReport report, Paper paper) {
    this.report = report;
    this.lengths = report.lengths();
    this.paper = paper;
  }

  static void write(JobReport report, Paper paper) {
    new CertificateSection(report, paper).write();
  }

  private void write() {
    Job job = report.job();
    paper.title(job.name(), "Certificate of measured radius" + part(job));
    paper.large(verdict());
    paper.facts(order(), 4);
    paper.heading("Specification");
    paper.facts(specification(), 4);
    paper.heading("Result");
    paper.facts(result(), 4);
    LeftOutSection.write(report, paper);
    statements();
    paper.heading("Gauge");
    paper.facts(gauge(), 4);
    cautions();
    paper.signatures("Measured by", "Released by", "Date");
    seal();
  }

  private static String part(Job job) {
    return job.part().isBlank() ? "" : " · " + job.part();
  }

  /** The pieces in one sentence. */
  private String verdict() {
    ReadingCounts tally = report.measured().tally();
    String pieces = Counted.of(tally.pieces(), "piece");
    if (tally.pieces() == 0) {
      return "No piece has been measured yet.";
    }
    if (tally.readings() == 0) {
      return pieces + " measured, none with a reading that counts.";
    }
    if (tally.readings(Decision.NO_LIMITS) > 0) {
      return joined(joined(pieces + " measured", without(tally)), partly(tally, ""))
          + "; the order has no limits to judge them by.";
    }
    List<String> exceptions = exceptions(tally);
    return exceptions.isEmpty()
        ? joined("All " + pieces + " measured are within the limits", partly(tally, "of them "))
            + "."
        : joined(joined("Of " + pieces + " measured", exceptions), partly(tally, "")) + ".";
  }

  private static String joined(String first, List<String> then) {
    return Stream.concat(Stream.of(first), then.stream()).collect(Collectors.joining(", "));
  }

  /** All of their readings are excluded. */
  private static List<String> without(ReadingCounts tally) {
    List<Integer> pieces = tally.without();
    return pieces.isEmpty()
        ? List.of()
        : List.of(pieces.size() + " without a reading that counts" + numbers(pieces));
  }

  private static List<String> partly(ReadingCounts tally, String of) {
    int pieces = tally.gaps().size();
    return pieces == 0
        ? List.of()
        : List.of(pieces + " " + of + "without a reading at every position");
  }

  private static List<String> exceptions(ReadingCounts tally) {
    List<String> parts = new ArrayList<>();
    if (tally.piecesOutside() > 0) {
      parts.add(tally.piecesOutside() + " out of tolerance" + numbers(tally.outside()));
    }
    if (tally.piecesUndecided() > 0) {
      parts.add(tally.piecesUndecided() + " too close to a limit to call");
    }
    parts.addAll(without(tally));
    return parts;
  }

  /** Of a few pieces; of many the readings tell. */
  private static String numbers(List<Integer> pieces) {
    return pieces.size() > MOST_NUMBERS
        ? ""
        : (pieces.size() == 1 ? " (piece " : " (pieces ")
            + pieces.stream().map(String::valueOf).collect(Collectors.joining(", "))
            + ")";
  }

  private List<Paper.Fact> order() {
    Job job = report.job();
    OrderDetails details = job.details();
    return List.of(
        new Paper.Fact("Customer", orDash(details.customer())),
        new Paper.Fact("Part", orDash(job.part())),
        new Paper.Fact("Drawing revision", orDash(details.drawingRevision())),
        new Paper.Fact("Section", lengths.of(job.section())),
        new Paper.Fact("Material lots", orDash(String.join(", ", report.log().lots()))),
        new Paper.Fact("Machine", job.machine()),
        new Paper.Fact("Opened", Print.time(job.openedAtMicros(), report.zone())),
        new Paper.Fact(thatCounts("Last reading"), lastReading()));
  }

  /** Said only where there are others. */
  private String thatCounts(String reading) {
    return report.measured().tally().excluded() == 0 ? reading : reading + " that counts";
  }

  private String lastReading() {
    return report
        .newest()
        .map(each -> Print.time(each.wallMicros(), report.zone()))
        .orElse(Print.NONE);
  }

  private List<Paper.Fact> specification() {
    Specification asked = report.job().specification();
    return List.of(
        new Paper.Fact("Radius of the " + Words.of(asked.face()), lengths.asked(asked.targetMm())),
        new Paper.Fact("Lower limit", lengths.asked(asked.lowerLimitMm())),
        new Paper.Fact("Upper limit", lengths.asked(asked.upperLimitMm())),
        new Paper.Fact("Revision of the limits", String.valueOf(report.job().revision())),
        new Paper.Fact("Measured on", Words.of(report.job().measuredFace())),
        new Paper.Fact("Positions", String.join(", ", report.job().plan().positions())));
  }

  private List<Paper.Fact> result() {
    ReadingCounts tally = report.measured().tally();
    String readings = tally.excluded() == 0 ? "Readings" : "Readings that count";
    List<Paper.Fact> facts = new ArrayList<>();
    facts.add(new Paper.Fact("Pieces", String.valueOf(tally.pieces())));
    facts.add(new Paper.Fact(readings, String.valueOf(tally.readings())));
    if (tally.excluded() > 0) {
      facts.add(new Paper.Fact("Readings excluded", String.valueOf(tally.excluded())));
    }
    for (Decision decision : Decision.values()) {
      if (tally.readings(decision) > 0) {
        facts.add(
            new Paper.Fact(Print.of(decision), Counted.of(tally.readings(decision), "reading")));
      }
    }
    return facts;
  }

  /** In control, capable, gauge: since the last change of the process. */
  private void statements() {
    JobVerdict verdict = report.statistics().verdict();
    paper.text("Since the last change of the process:");
    statement("Process", verdict.control());
    statement("Capability", verdict.capability());
    statement("Gauge", verdict.gauge());
  }

  private void statement(String of, Statement said) {
    String reason = said.reason().isEmpty() ? "." : ". " + lengths.said(said.reason());
    paper.text("• " + of + ": " + said.word() + reason);
  }

  private List<Paper.Fact> gauge() {
    List<Paper.Fact> facts = new ArrayList<>();
    report
        .newestSetUp()
        .ifPresent(
            setUp -> {
              facts.add(new Paper.Fact("Bridge", setUp.bridge().name()));
              facts.add(
                  new Paper.Fact(thatCounts("Newest reading") + ", 95 % interval", uncertainty()));
              facts.add(
                  new Paper.Fact(
                      "Calibrated",
                      setUp.calibration() == null
                          ? "no: nominal span used"
                          : Print.time(setUp.calibration().takenAtMicros(), report.zone())));
            });
    facts.add(new Paper.Fact("Checked on a master", lastCheck()));
    return facts;
  }

  /** Of the newest reading that counts. */
  private String uncertainty() {
    Reading newest = report.newest().orElseThrow();
    return lengths.withUnit(lengths.radius(newest.radius()))
        + " ("
        + lengths.interval(newest.radius())
        + ")";
  }

  private String lastCheck() {
    List<InterimCheck> checks = report.gauge().checks();
    return checks.isEmpty()
        ? "not yet"
        : (checks.get(0).passed() ? "passed, " : "failed, ")
            + Print.time(checks.get(0).takenAtMicros(), report.zone());
  }

  private void cautions() {
    List<String> cautions = CautionsSection.of(report);
    cautions.stream().limit(MOST_CAUTIONS).forEach(text -> paper.text("! " + text));
    if (cautions.size() > MOST_CAUTIONS) {
      paper.text("! " + (cautions.size() - MOST_CAUTIONS) + " more on the next page.");
    }
    paper.text(
        "This certificate states measured radii and nothing else of the pieces; structural or"
            + " pressure work defers to the applicable code and to licensed practice. Decisions"
            + " after ISO 14253-1 with a guard band of 1.645 standard uncertainties.");
  }

  /** For whoever audits the records later. */
  private void seal() {
    SealTip tip = report.log().seal();
    paper.small("Records of database " + tip.database() + " up to entry " + tip.anchor());
    paper.small(
        "Chordlog " + MeasuringPart.version() + ", measuring part " + MeasuringPart.sha256());
  }

  private static String orDash(@Nullable String text) {
    return text == null || text.isBlank() ? Print.NONE : text;
  }
}
