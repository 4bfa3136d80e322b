package org.chordlog.report.qif;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.chordlog.measure.Decision;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.SetUp;
import org.chordlog.report.JobReport;
import org.chordlog.report.Reports;
import org.chordlog.stats.capability.Summary;
import org.chordlog.study.BiasStudy;
import org.chordlog.study.BiasStudy.Reference;
import org.chordlog.study.Contribution;
import org.chordlog.study.CrossedStudy;
import org.chordlog.study.LinearityStudy;
import org.chordlog.study.MeasuringProcess;
import org.chordlog.study.ProcessCapability;
import org.chordlog.study.Simulated;
import org.chordlog.study.StabilityStudy;
import org.chordlog.study.StudyReading;
import org.chordlog.study.StudySettings;
import org.chordlog.study.Telling;
import org.chordlog.study.Tolerance;

/** Invented jobs as input of a QIF document. */
public final class QifJobs {
  private static final StudySettings MM =
      StudySettings.usual().with(Telling.as("mm")).with(Tolerance.ofWidth(24));

  private QifJobs() {}

  /** The invented job of the reports, with a flat, an open interval and a piece measured again. */
  static QifJob small(int count) {
    JobReport report = Reports.of(count);
    List<QifReading> readings = new ArrayList<>();
    for (Reading reading : report.readings()) {
      readings.add(new QifReading(odd(reading), "lot A17", reading.id() == 9 ? "slipped" : ""));
    }
    return new QifJob(
        "0d9ec1f6-6d0b-4a37-9d5e-0f4f0b6f4b11",
        "0.1.0",
        report.job(),
        of(readings, report.measured().setUps()),
        capabilities(report.summaries()),
        studies());
  }

  static QifJob without(QifJob job, List<QifStudy> studies) {
    return new QifJob(
        job.databaseId(),
        job.softwareVersion(),
        job.job(),
        of(List.of(), Map.of()),
        job.capabilities(),
        studies);
  }

  private static Reading odd(Reading reading) {
    return switch ((int) reading.id()) {
      case 4 -> with(reading, 2, flat(reading.radius()), Decision.UNDECIDED);
      case 5 -> with(reading, 2, open(reading.radius()), Decision.UNDECIDED);
      case 12 -> with(reading, 1, reading.radius(), Decision.CONFORMS);
      default -> reading;
    };
  }

  private static RadiusEstimate flat(RadiusEstimate radius) {
    return new RadiusEstimate(null, 90_000, null, 1e-7, radius.standardUncertaintyPerMm(), 2, 1e6);
  }

  private static RadiusEstimate open(RadiusEstimate radius) {
    return new RadiusEstimate(
        150_000.0, 60_000, null, 1 / 150_000.0, radius.standardUncertaintyPerMm(), 2, 30);
  }

  static Reading with(Reading r, int piece, RadiusEstimate radius, Decision decision) {
    return new Reading(
        r.id(),
        r.station(),
        r.stationSequence(),
        r.jobId(),
        piece,
        r.position(),
        r.captured(),
        r.depthNm(),
        r.setUpId(),
        radius,
        decision,
        r.marks(),
        r.clock(),
        r.rawHex());
  }

  static QifReadings of(List<QifReading> readings, Map<Long, SetUp> setUps) {
    return new QifReadings() {
      @Override
      public Iterator<QifReading> all() {
        return readings.iterator();
      }

      @Override
      public SetUp setUp(long id) {
        return setUps.get(id);
      }
    };
  }

  private static List<QifCapability> capabilities(List<Summary> summaries) {
    return summaries.stream()
        .map(
            summary ->
                summary.characteristic().equals("middle")
                    ? new QifCapability(
                        summary,
                        true,
                        1790.5,
                        1811.25,
                        List.of(new QifIssue("test 1 broken: beyond a limit", List.of(8L, 999L))))
                    : new QifCapability(summary, false, null, null, List.of()))
        .collect(Collectors.toList());
  }

  static List<QifStudy> studies() {
    Simulated simulated = new Simulated(3);
    List<StudyReading> crossed =
        simulated.crossed(10, 3, 2, new Simulated.Sigmas(2, 0.3, 0.1, 0.4));
    List<StudyReading> days = simulated.nested(2, 6, 3, new Simulated.Sigmas(0.2, 0.1, 0, 0.3));
    double[] references = IntStream.range(0, 12).mapToDouble(i -> 1 + i / 3).toArray();
    double[] values = simulated.normal(12, 0, 0.002);
    for (int i = 0; i < 12; i++) {
      values[i] += references[i] * 1.0004 + 0.003;
    }
    return List.of(
        new QifStudy("crossed, three operators", CrossedStudy.of(crossed, MM)),
        new QifStudy(
            "bias on 1800",
            BiasStudy.of(simulated.normal(12, 1800.3, 0.4), new Reference(1800, 0.2), MM)),
        new QifStudy("linearity", LinearityStudy.of(references, values, MM).result(200.0)),
        new QifStudy("stability", StabilityStudy.of(days, MM)),
        new QifStudy(
            "process",
            ProcessCapability.of(
                MeasuringProcess.empty().with(Contribution.EVR, 0.4, 11).withCalibration(0.2),
                24,
                MM)));
  }

  static byte[] bytes(QifJob job) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      QifWriter.write(job, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  /** So many readings, three a piece, made anew each time they are gone through. */
  public static QifJob large(int count) {
    JobReport report = Reports.of(300);
    QifReadings readings =
        new QifReadings() {
          @Override
          public Iterator<QifReading> all() {
            return IntStream.range(0, count).mapToObj(i -> repeated(report, i)).iterator();
          }

          @Override
          public SetUp setUp(long id) {
            return java.util.Objects.requireNonNull(report.measured().setUps().get(id));
          }
        };
    return new QifJob(
        "0d9ec1f6-6d0b-4a37-9d5e-0f4f0b6f4b11",
        "0.1.0",
        report.job(),
        readings,
        report.summaries().stream()
            .map(summary -> new QifCapability(summary, false, null, null, List.of()))
            .toList(),
        List.of());
  }

  private static QifReading repeated(JobReport report, int number) {
    Reading of = report.readings().get(number % report.readings().size());
    Reading reading = with(of, number / 3 + 1, of.radius(), of.decision()).withId(number + 1);
    return new QifReading(reading, "lot A17", number % 1000 == 999 ? "slipped" : "");
  }
}
