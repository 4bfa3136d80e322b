package org.chordlog.report.qif;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.ClockState;
import org.chordlog.measure.Decision;
import org.chordlog.measure.Face;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.OrderDetails;
import org.chordlog.measure.Plan;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.stats.capability.Figure;
import org.chordlog.stats.capability.Summary;
import org.chordlog.stats.control.Scope;
import org.chordlog.study.BiasStudy;
import org.chordlog.study.BiasStudy.Reference;
import org.chordlog.study.Contribution;
import org.chordlog.study.CrossedStudy;
import org.chordlog.study.FigureUnit;
import org.chordlog.study.LinearityStudy;
import org.chordlog.study.MeasuringProcess;
import org.chordlog.study.ProcessCapability;
import org.chordlog.study.Simulated;
import org.chordlog.study.StabilityStudy;
import org.chordlog.study.StudyReading;
import org.chordlog.study.StudySettings;
import org.chordlog.study.Tolerance;

/** Invented jobs as input of a QIF document: hoops of 1800 ± 12 mm, measured at three positions. */
public final class QifJobs {
  private static final long START = 1_764_050_400_000_000L;
  private static final List<String> POSITIONS = List.of("start", "middle", "end");
  private static final String DATABASE = "0d9ec1f6-6d0b-4a37-9d5e-0f4f0b6f4b11";
  private static final StudySettings MM =
      StudySettings.usual().with(FigureUnit.as("mm")).with(Tolerance.ofWidth(24));

  private QifJobs() {}

  /**
   * The fourth reading is a flat, the fifth has an open interval, the eighth was taken on a master,
   * the ninth is excluded, the twelfth was taken on piece 1 again.
   */
  static QifJob small(int count) {
    return new QifJob(
        DATABASE,
        "0.1.0",
        job().withDetails(new OrderDetails("Żółw & Söhne", "C", null, null)),
        readings(count, QifJobs::odd),
        List.of(
            new QifCapability(summary("whole piece"), true, false, null, null, List.of()),
            new QifCapability(summary("end"), true, false, null, null, List.of()),
            new QifCapability(
                summary("middle"),
                false,
                true,
                1790.5,
                1811.25,
                List.of(new QifIssue("test 1 broken: beyond a limit", List.of(5L, 999L))))),
        studies());
  }

  static QifJob without(QifJob job, List<QifStudy> studies) {
    return new QifJob(
        job.databaseId(),
        job.softwareVersion(),
        job.job(),
        readings(0, QifJobs::plain),
        job.capabilities(),
        studies);
  }

  /** So many readings, three a piece, made anew each time they are read. */
  public static QifJob large(int count) {
    return new QifJob(
        DATABASE,
        "0.1.0",
        job(),
        readings(count, QifJobs::plain),
        POSITIONS.stream()
            .map(at -> new QifCapability(summary(at), true, false, null, null, List.of()))
            .toList(),
        List.of());
  }

  private static Job job() {
    return new Job(
        7,
        0,
        new Job.Order("Canopy hoops Ø 60", "hoop 1800", "lot A17"),
        new Job.Workplace("rolls 1", "bay 2"),
        new Job.Inspection(
            new Section.RoundTube(60.3, 3.2),
            Face.OUTER,
            new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
            new Plan(POSITIONS, new SubgroupRule(SubgroupRule.Kind.PIECE, 3))),
        Job.State.OPEN,
        START);
  }

  private static QifReadings readings(int count, IntFunction<QifReading> each) {
    SetUp setUp = setUp();
    return new QifReadings() {
      @Override
      public Iterator<QifReading> all() {
        return IntStream.range(0, count).mapToObj(each).iterator();
      }

      @Override
      public SetUp setUp(long id) {
        return setUp;
      }
    };
  }

  private static SetUp setUp() {
    return new SetUp(
        new Bridge(1, "bridge 200", new Bridge.Span(200, 0.01), new Bridge.Feet(5, 0.005), 0.5),
        new Indicator(0.001, 0.005, 12.7),
        null,
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
        new Section.RoundTube(60.3, 3.2),
        Face.OUTER,
        Face.CENTRELINE);
  }

  private static QifReading plain(int number) {
    double radius = 1800 + (number * 7919L % 33 - 16) * 0.75;
    String reason = number % 1000 == 999 ? "slipped" : "";
    Reading reading = reading(number, number / 3 + 1, estimate(radius), Circumstances.UNRECORDED);
    return new QifReading(reading, decision(radius), reason);
  }

  private static Decision decision(double radius) {
    double off = Math.abs(radius - 1800);
    if (off > 11.5) {
      return Decision.DOES_NOT_CONFORM;
    }
    return off > 10 ? Decision.UNDECIDED : Decision.CONFORMS;
  }

  private static QifReading odd(int number) {
    Circumstances measured =
        new Circumstances(ReadingKind.PRODUCT, 2, 1, "M. Okafor", "heat 88123");
    return switch (number) {
      case 3 -> undecided(number, new RadiusEstimate(null, 90_000, null, 1e-7, 3e-7, 2, 1e6));
      case 4 ->
          undecided(number, new RadiusEstimate(150_000.0, 60_000, null, 1e-5 / 1.5, 3e-7, 2, 30));
      case 7 ->
          QifReading.of(reading(number, 3, estimate(1500), measured.withKind(ReadingKind.MASTER)));
      case 8 -> new QifReading(plain(number).reading(), Decision.DOES_NOT_CONFORM, "slipped");
      case 11 -> QifReading.of(reading(number, 1, estimate(1800.125), measured));
      default -> plain(number);
    };
  }

  private static QifReading undecided(int number, RadiusEstimate radius) {
    Reading reading = reading(number, 2, radius, Circumstances.UNRECORDED);
    return new QifReading(reading, Decision.UNDECIDED, "");
  }

  private static RadiusEstimate estimate(double radius) {
    return new RadiusEstimate(radius, radius - 2.1, radius + 2.1, 1 / radius, 3e-7, 2.05, 60);
  }

  private static Reading reading(
      int number, int piece, RadiusEstimate radius, Circumstances circumstances) {
    long wall = START + number * 45_000_000L;
    long depth = 2_700_000 + number * 7919L % 10_007;
    return new Reading(
        number + 1,
        new Reading.Source("bay 2", number + 1, ClockState.STEADY, "2b30"),
        new Reading.Place(7, piece, POSITIONS.get(number % 3)),
        new Reading.Measured(
            new CapturedDepth(
                CaptureMode.SETTLED,
                depth,
                400,
                12,
                new CapturedDepth.SampleRange(number, number + 11),
                new CapturedDepth.Moment(wall, wall)),
            depth,
            1),
        new Reading.Result(
            radius, Decision.CONFORMS, number == 4 ? Set.of(Mark.ZERO_STALE) : Set.of()),
        circumstances);
  }

  private static Summary summary(String position) {
    return new Summary(
        position,
        Scope.JOB,
        36,
        List.of(
            figure("n", 36, 36, 36),
            figure("mean", 1800.5, 1799.25, 1801.75),
            figure("minimum", 1788.5, 1788.5, 1788.5),
            figure("maximum", 1811, 1811, 1811),
            figure("standardDeviationOverall", 3.5, 2.75, 4.5),
            figure("standardDeviationWithin", 3.25, 2.5, 4.25),
            figure("Cp", 1.25, 0.9, 1.55),
            figure("Cpk", 1.125, 0.8, 1.4),
            figure("Pp", 1.1, 0.85, 1.4),
            figure("Ppk", 1.0625, 0.8, 1.3)),
        List.of());
  }

  private static Figure figure(String name, double value, double lower, double upper) {
    boolean ranged = lower < upper;
    return new Figure(
        name,
        value,
        ranged ? (Double) lower : null,
        ranged ? (Double) upper : null,
        ranged ? (Double) 0.95 : null,
        "mm",
        "invented",
        "");
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
        new QifStudy("stability", StabilityStudy.of(days, null, MM)),
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
}
