package org.chordlog.report;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.chordlog.chart.Snapshots;
import org.chordlog.chart.ViewUnit;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Plan;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.SignalAnswer;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.Zero;
import org.chordlog.stats.JobStatistics;
import org.chordlog.stats.LotSummary;
import org.chordlog.stats.PassSummary;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Scope;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.store.SealTip;
import org.chordlog.verdict.JobVerdict;

/** An invented job as a report. */
public final class Reports {
  private static final SealTip SEAL =
      new SealTip("3b5c6a52-90f1-4c0e-a1d2-7f2d3c4b5a69", 4_711, "0123456789abcdef".repeat(4));
  private static final long START = 1_764_050_400_000_000L;
  private static final List<String> POSITIONS = List.of("start", "middle", "end");

  /** Of reading 7, by limits that were changed since. */
  static final Decision NOW = Decision.DOES_NOT_CONFORM;

  private static final PassSummary PASSES =
      new PassSummary(40, 1.05, 2, List.of(new PassSummary.Pass(2, 6, -31.4, 2.25)));

  private Reports() {}

  private static List<LotSummary> lots(JobStatistics statistics) {
    String first = statistics.characteristics().get(0);
    Summary summary = statistics.summary(first, Scope.JOB);
    return List.of(
        new LotSummary("lot A17", 1, 60, 20, summary),
        new LotSummary("lot B", 61, 120, 20, summary));
  }

  public static JobReport of(int count) {
    return of(count, ViewUnit.MM);
  }

  /** With lengths printed in that unit. */
  public static JobReport of(int count, ViewUnit unit) {
    Job job = job();
    List<Reading> readings = readings(count);
    JobStatistics statistics = statistics(job, readings);
    List<Exclusion> exclusions =
        count < 9 ? List.of() : List.of(new Exclusion(1, 9, true, "bridge slipped", START, "op"));
    return new JobReport(
        job,
        new JobReport.Measured(
            readings,
            count,
            exclusions,
            Map.of(1L, setUp(job)),
            Map.of(7L, NOW),
            tally(readings, exclusions)),
        new JobReport.Log(events(), causes(), List.of(), List.of("lot A17", "lot B"), SEAL),
        new JobReport.Statistics(
            summaries(statistics),
            verdict(job, statistics),
            new Snapshots(),
            lots(statistics),
            PASSES,
            Optional.empty()),
        gauge(),
        new JobReport.Printing(
            Instant.parse("2026-11-25T10:15:00Z"), ZoneId.of("Europe/Berlin"), unit, true));
  }

  private static ReadingCounts tally(List<Reading> readings, List<Exclusion> exclusions) {
    ReadingCounts tally = new ReadingCounts(POSITIONS);
    for (Reading each : readings) {
      exclusions.stream()
          .filter(other -> other.readingId() == each.id())
          .findFirst()
          .ifPresentOrElse(
              other -> tally.addExcluded(each.piece(), each.position(), other.reason()),
              () -> tally.add(each.piece(), each.position(), each.decision()));
    }
    return tally;
  }

  private static JobVerdict verdict(Job job, JobStatistics statistics) {
    String first = statistics.characteristics().get(0);
    return new JobVerdict(
        statistics.summary(first, Scope.PHASE), statistics.control(first), job.specification());
  }

  private static Sentence length(String pattern, double mm) {
    return Sentence.of(pattern, Quantity.stated(mm));
  }

  private static JobReport.Gauge gauge() {
    return new JobReport.Gauge(
        List.of(
            new UncertaintyLine(
                "resolution of the reading",
                length("%s", 0.001),
                "rectangular",
                0.00029,
                "mm",
                0.096),
            new UncertaintyLine(
                "permissible error", length("± %s", 0.005), "rectangular", 0.0029, "mm", 0.962),
            new UncertaintyLine("span", length("%s", 200), "normal", 0.01, "mm", 0.183)),
        List.of(
            new InterimCheck(
                1,
                "bay 2",
                1,
                1,
                new InterimCheck.Comparison(1500.4, 1500.02, 1.5, true),
                new Recorded(START, "op"))));
  }

  private static Job job() {
    return new Job(
        7,
        0,
        new Job.Order("Canopy hoops Ø 60 – Żółw", "hoop 1800", "lot A17"),
        new Job.Workplace("rolls 1", "bay 2"),
        new Job.Inspection(
            new Section.RoundTube(60.3, 3.2),
            Face.OUTER,
            new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
            new Plan(POSITIONS, new SubgroupRule(SubgroupRule.Kind.PIECE, 3))),
        Job.State.OPEN,
        START);
  }

  private static SetUp setUp(Job job) {
    return new SetUp(
        new Bridge(1, "bridge 200", new Bridge.Span(200, 0.01), new Bridge.Feet(5, 0.005), 0.5),
        new Indicator(0.001, 0.005, 12.7),
        new Zero(1, "bay 2", 1, 1_250_000, 300, 40, new Recorded(START, "op")),
        new Calibration(
            1,
            "bay 2",
            1,
            new Calibration.Fitted(
                200.013,
                0.0004,
                5,
                List.of(List.of(1e-4, 0.0, 0.0), List.of(0.0, 1e-7, 0.0), List.of(0.0, 0.0, 0.0)),
                6),
            new Recorded(START - 86_400_000_000L, "qa"),
            START + 86_400_000_000L * 180,
            "three masters"),
        job.section(),
        Face.OUTER,
        Face.CENTRELINE);
  }

  private static List<Reading> readings(int count) {
    Random random = new Random(11);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double radius = 1801 + 4 * random.nextGaussian();
      Decision decision =
          radius > 1813 || radius < 1787
              ? Decision.DOES_NOT_CONFORM
              : radius > 1809 || radius < 1791 ? Decision.UNDECIDED : Decision.CONFORMS;
      readings.add(reading(i, radius, decision));
    }
    return readings;
  }

  private static Reading reading(int i, double radius, Decision decision) {
    long wall = START + i * 45_000_000L;
    long depth = Math.round(1e6 * 100 * 100 / (2 * (radius + 30.15)));
    return new Reading(
        i + 1,
        new Reading.Source("bay 2", i + 1, ClockState.STEADY, "2b30"),
        new Reading.Place(7, i / 3 + 1, POSITIONS.get(i % 3)),
        new Reading.Measured(
            new CapturedDepth(
                CaptureMode.SETTLED,
                depth + 1_250_000,
                400,
                12,
                new CapturedDepth.SampleRange(i, i + 11),
                new CapturedDepth.Moment(wall, wall)),
            depth,
            1),
        new Reading.Result(
            new RadiusEstimate(radius, radius - 2.1, radius + 2.1, 1 / radius, 3e-7, 2.05, 60),
            decision,
            i == 4 ? Set.of(Mark.ZERO_STALE) : Set.of()),
        Circumstances.UNRECORDED);
  }

  private static List<JobReport.Cause> causes() {
    SignalAnswer.PointName point = new SignalAnswer.PointName("middle", "INDIVIDUALS", 12);
    SignalAnswer answer =
        new SignalAnswer(1, 7, point, "Bearing loose", "Tightened", new Recorded(START, "op"));
    return List.of(new JobReport.Cause(4, answer));
  }

  private static List<JobEvent> events() {
    return List.of(
        new JobEvent(
            1,
            7,
            "rolls 1",
            JobEvent.Kind.CORRECTION,
            30,
            new JobEvent.Content(41.2, 41.35, "", "crept up"),
            new Recorded(START, "op")),
        new JobEvent(
            2,
            7,
            "rolls 1",
            JobEvent.Kind.MATERIAL_LOT,
            60,
            new JobEvent.Content(null, null, "lot B", ""),
            new Recorded(START, "op")));
  }

  private static JobStatistics statistics(Job job, List<Reading> readings) {
    JobStatistics statistics =
        new JobStatistics(StatisticsPlan.ofRadius(job.specification(), job.plan()));
    for (Reading reading : readings) {
      Double radius = reading.radius().radiusMm();
      if (radius != null) {
        statistics.add(
            new Observation(
                reading.id(),
                reading.piece(),
                reading.position(),
                reading.wallMicros(),
                radius,
                1));
      }
    }
    return statistics;
  }

  private static List<Summary> summaries(JobStatistics statistics) {
    return statistics.characteristics().stream()
        .map(name -> statistics.summary(name, Scope.JOB))
        .toList();
  }
}
