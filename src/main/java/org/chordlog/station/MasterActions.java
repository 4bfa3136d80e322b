package org.chordlog.station;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Check;
import org.chordlog.measure.Face;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.Master;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Section;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.Zero;
import org.chordlog.radius.CalibrationAdvice;
import org.chordlog.radius.CalibrationFit;
import org.chordlog.radius.Faces;
import org.chordlog.radius.InterimVerdict;
import org.chordlog.radius.MasterReading;
import org.chordlog.radius.RadiusModel;
import org.chordlog.radius.ZeroEvaluation;
import org.chordlog.store.Gauges;
import org.jspecify.annotations.Nullable;

/**
 * Calibrating and checking a station: stand on a master, read it, the next one, then look at the
 * fit and keep it or not. Readings so far are forgotten at a restart and at a change of bridge. Any
 * thread may call; one call at a time.
 */
public final class MasterActions {
  private static final int MOST_READINGS = 50;

  private final StationSettings settings;
  private final StationActions actions;
  private final StationContext around;
  private final List<MasterReading> readings = new ArrayList<>();
  private long readOnBridge;

  MasterActions(StationSettings settings, StationActions actions, StationContext around) {
    this.settings = settings;
    this.actions = actions;
    this.around = around;
  }

  private Gauges gauges() {
    return around.store().gauges();
  }

  /** Reads the master that the bridge stands still on, for a calibration. */
  public synchronized MasterReading read(long masterId, String by) {
    Bridge bridge = actions.mounted();
    forgetOtherThan(bridge);
    Check.within("readings", readings.size() + 1L, 1, MOST_READINGS);
    MasterReading reading = readingOn(master(masterId), bridge, by);
    readings.add(reading);
    return reading;
  }

  private void forgetOtherThan(Bridge bridge) {
    if (readOnBridge != bridge.id()) {
      readings.clear();
      readOnBridge = bridge.id();
    }
  }

  private MasterReading readingOn(Master master, Bridge bridge, String by) {
    Zero zero = zeroOn(bridge);
    ZeroEvaluation value = atRestOn(master, by);
    return new MasterReading(
        master, value.valueNm() - zero.valueNm(), value.scatterNm(), value.sampleCount());
  }

  private ZeroEvaluation atRestOn(Master master, String by) {
    return actions.atRest("on master " + master.name(), by).value();
  }

  private Master master(long id) {
    return gauges().masters().stream()
        .filter(master -> master.id() == id)
        .findFirst()
        .orElseThrow(() -> new BadInput("masterId", id, "is not known", "an id from the list"));
  }

  private Zero zeroOn(Bridge bridge) {
    Zero fresh =
        gauges()
            .zeroOfMounted(settings.name())
            .filter(zero -> zero.bridgeId() == bridge.id() && !actions.zeroMoved())
            .filter(zero -> !settings.zero().staleAt(zero.takenAtMicros(), now()))
            .orElseThrow(
                () ->
                    new BadInput("zero", "none", "is fresh on this bridge", "take the zero first"));
    ZeroLifts lifts = new ZeroLifts(around.store().checkpoints(), settings.name());
    if (lifts.doubt(fresh.id()) != null) {
      throw new BadInput("zero", "it", "is in doubt", "set zero again, on the flat");
    }
    return fresh;
  }

  private long now() {
    return around.clock().wallMicros();
  }

  /** What was read so far, in order. */
  public synchronized List<MasterReading> readings() {
    return List.copyOf(readings);
  }

  public synchronized void forget() {
    readings.clear();
  }

  /** The fit of what was read so far; {@link BadInput} when it can't determine the span. */
  public synchronized CalibrationFit fit() {
    Bridge bridge = actions.mounted();
    forgetOtherThan(bridge);
    return CalibrationFit.of(bridge, settings.indicator(), zeroOn(bridge), readings);
  }

  /**
   * What the fit of what was read so far does to the uncertainty: at the radius of the active job
   * on the face that is measured, else at the widest master.
   */
  public synchronized CalibrationAdvice advice() {
    Bridge bridge = actions.mounted();
    forgetOtherThan(bridge);
    Job job = around.store().jobs().activeOn(settings.name()).orElse(null);
    Master widest =
        readings.stream()
            .map(MasterReading::master)
            .max(Comparator.comparingDouble(Master::radiusMm))
            .orElseThrow(() -> new BadInput("readings", "none", "was taken", "one on a master"));
    Face face = job == null ? widest.face() : job.measuredFace();
    double radius = job == null ? widest.radiusMm() : onMeasuredFace(job);
    return CalibrationAdvice.of(
        bridge, settings.indicator(), zeroOn(bridge), readings, face, radius);
  }

  private static double onMeasuredFace(Job job) {
    return Faces.convertMm(
        job.specification().targetMm(),
        job.section(),
        job.specification().face(),
        job.measuredFace());
  }

  /** By how much a check on that master may differ, as stated with it; null if it was not. */
  public @Nullable Double checkLimitMm(long masterId) {
    return master(masterId).checkLimitMm();
  }

  /** Keeps the fit as the calibration of this station and bridge, due again at that time. */
  public synchronized Calibration keep(long dueAtMicros, String by) {
    CalibrationFit fit = fit();
    long now = around.clock().wallMicros();
    Calibration kept =
        gauges().add(fit.record(settings.name(), readOnBridge, now, dueAtMicros, now, by));
    readings.clear();
    actions.refresh();
    return kept;
  }

  /** An interim check: passes when the radius differs from the master's by no more than that. */
  public InterimCheck check(long masterId, double limitMm, String by) {
    Check.positive("limitMm", limitMm);
    Bridge bridge = actions.mounted();
    Master master = master(masterId);
    Zero zero = zeroOn(bridge);
    ZeroEvaluation value = atRestOn(master, by);
    RadiusEstimate radius =
        RadiusModel.of(setUp(bridge, master, zero))
            .estimate(value.valueNm() - zero.valueNm(), value.scatterNm(), value.sampleCount());
    InterimVerdict verdict = InterimVerdict.of(radius, master, limitMm);
    InterimCheck kept = gauges().add(checkOf(bridge, master, verdict, by));
    actions.refresh();
    return kept;
  }

  private SetUp setUp(Bridge bridge, Master master, Zero zero) {
    return new SetUp(
        bridge,
        settings.indicator(),
        zero,
        gauges().latestCalibration(settings.name(), bridge.id()).orElse(null),
        new Section.Flat(1, 1),
        master.face(),
        master.face());
  }

  private InterimCheck checkOf(Bridge bridge, Master master, InterimVerdict verdict, String by) {
    return new InterimCheck(
        0,
        settings.name(),
        bridge.id(),
        master.id(),
        new InterimCheck.Comparison(
            verdict.radiusMm(), master.radiusMm(), verdict.limitMm(), verdict.passed()),
        new Recorded(around.clock().wallMicros(), by));
  }
}
