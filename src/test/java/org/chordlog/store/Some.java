package org.chordlog.store;

import java.util.List;
import java.util.Map;
import java.util.Set;
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
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Plan;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Reading;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Specification;
import org.chordlog.measure.SubgroupRule;
import org.chordlog.measure.Zero;
import org.chordlog.measure.alert.Alert;
import org.chordlog.measure.alert.AlertEvent;
import org.chordlog.measure.alert.AlertEvidence;
import org.chordlog.measure.alert.AlertFigure;
import org.chordlog.measure.alert.AlertKey;
import org.chordlog.measure.alert.AlertState;
import org.chordlog.measure.alert.AlertStatus;

/** Invented records for the store's tests. */
public final class Some {
  public static final long T0 = 1_790_000_000_000_000L;

  /** Housekeeping would remove samples of the day T0 as too old. */
  public static final StoreSettings KEEPING_ALL = StoreSettings.USUAL.withTraceDays(0);

  /** The same, for tests that wait for what the store does by itself. */
  public static final StoreSettings QUICK =
      new StoreSettings(20, 20, 50, 20, 0, StoreSettings.USUAL.traceFreeBytes());

  private Some() {}

  public static Job job(String name, String machine) {
    return Job.opened(
        new Job.Order(name, "hoop", "lot 1"),
        new Job.Workplace(machine, "A"),
        new Job.Inspection(
            new Section.RoundTube(60.3, 3.2),
            Face.OUTER,
            new Specification(Face.CENTRELINE, 1800, 1788.0, 1812.0),
            new Plan(
                List.of("start", "middle", "end"), new SubgroupRule(SubgroupRule.Kind.PIECE, 3))),
        T0);
  }

  public static Bridge bridge(String name) {
    return new Bridge(0, name, new Bridge.Span(200.013, 0.01), new Bridge.Feet(5, 0.005), 0.5);
  }

  public static SetUp setUp(Bridge bridge) {
    return new SetUp(
        bridge,
        new Indicator(0.01, 0.02, 12.5),
        new Zero(3, "A", bridge.id(), -12_340_000, 2_000, 20, new Recorded(T0, "me")),
        calibration(bridge.id()),
        new Section.RoundTube(60.3, 3.2),
        Face.OUTER,
        Face.CENTRELINE);
  }

  public static Calibration calibration(long bridgeId) {
    List<Double> row = List.of(1e-4 / 3, 0.0, 0.0);
    return new Calibration(
        4,
        "A",
        bridgeId,
        new Calibration.Fitted(
            200.021,
            0,
            5,
            List.of(row, List.of(0.0, 0.0, 0.0), List.of(0.0, 0.0, 0.0)),
            Double.POSITIVE_INFINITY),
        new Recorded(T0, "me"),
        T0 + 1,
        "two masters");
  }

  public static Exclusion exclusion(long readingId, boolean excluded) {
    return new Exclusion(0, readingId, excluded, "knocked", T0, "me");
  }

  /** The same reading at another wall time. */
  public static Reading at(Reading reading, long wallMicros) {
    CapturedDepth captured = reading.captured();
    return new Reading(
        reading.id(),
        reading.source(),
        reading.place(),
        new Reading.Measured(
            new CapturedDepth(
                captured.mode(),
                captured.valueNm(),
                captured.scatterNm(),
                captured.sampleCount(),
                captured.samples(),
                new CapturedDepth.Moment(captured.monotonicNanos(), wallMicros)),
            reading.depthNm(),
            reading.setUpId()),
        reading.result(),
        reading.circumstances());
  }

  /** A new alert with evidence. */
  public static AlertEvent raised(AlertKey key, long atMicros) {
    AlertEvidence evidence =
        AlertEvidence.of(Map.of(AlertFigure.SINCE_PIECE, 41.0, AlertFigure.CHANGE, -1e-3 / 3));
    return new AlertEvent(
        AlertEvent.What.RAISED,
        AlertState.NORMAL,
        Alert.raised(
            key,
            AlertStatus.raised(atMicros, false),
            evidence.withDetail("said so").withReadings(3, 9)),
        new Recorded(atMicros, AlertEvent.SERVICE),
        "");
  }

  /** A reading whose every figure depends on its sequence. */
  public static Reading reading(String station, long sequence, long jobId, long setUpId) {
    double radius = 1800 + Math.sin((double) sequence) * 9;
    return new Reading(
        0,
        new Reading.Source(station, sequence, ClockState.STEADY, "2b30322e3736300d0a"),
        new Reading.Place(
            jobId,
            (int) ((sequence + 2) / 3),
            List.of("start", "middle", "end").get((int) ((sequence - 1) % 3))),
        new Reading.Measured(
            new CapturedDepth(
                CaptureMode.SETTLED,
                -9_580_000 - sequence,
                1_500,
                12,
                new CapturedDepth.SampleRange(sequence * 40, sequence * 40 + 12),
                new CapturedDepth.Moment(sequence * 4_000_000_017L, T0 + sequence * 4_000_000)),
            2_760_000 + sequence,
            setUpId),
        new Reading.Result(
            new RadiusEstimate(
                sequence % 7 == 0 ? null : radius,
                radius - 3.1,
                sequence % 7 == 0 ? null : radius + 3.2,
                1 / radius,
                1e-6 / 3,
                2.05,
                sequence % 5 == 0 ? Double.POSITIVE_INFINITY : 41.5),
            sequence % 7 == 0 ? Decision.UNDECIDED : Decision.CONFORMS,
            sequence % 11 == 0 ? Set.of(Mark.ZERO_STALE, Mark.CALIBRATION_OVERDUE) : Set.of()),
        Circumstances.UNRECORDED);
  }
}
