package org.chordlog.station;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.capture.CaptureOutcome.Rejected;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Incident;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.measure.Sentence;
import org.chordlog.measure.SetUp;
import org.chordlog.measure.StudyMeasurement;
import org.chordlog.radius.RadiusModel;
import org.chordlog.store.RequestKey;
import org.chordlog.store.StoreException;
import org.chordlog.store.Studies;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What a station captures while a study of the gauge is running: a measurement of its next step. A
 * doubtful one is refused, so that the step is measured again. The station's thread's own but for
 * {@link #now()}; the store is written by another thread.
 */
final class StudyIntake {
  private static final Logger LOG = LoggerFactory.getLogger(StudyIntake.class);

  private final StationSettings settings;
  private final StationContext around;
  private final Runnable changed;

  /** When each step that counts was measured, UTC microseconds. */
  private final Map<Integer, Long> measured = new ConcurrentHashMap<>();

  private volatile @Nullable GaugeStudy running;
  private volatile int next;
  private @Nullable CompletableFuture<StudyMeasurement> ofContact;
  private WorkSnapshot.@Nullable Computed computed;

  /** {@code changed} is told when a measurement was stored or given up, by the storing thread. */
  StudyIntake(StationSettings settings, StationContext around, Runnable changed) {
    this.settings = settings;
    this.around = around;
    this.changed = changed;
  }

  private Studies studies() {
    return around.store().studies();
  }

  /**
   * Reads anew which study is running and what it still needs; goes on with what it knew on
   * trouble.
   */
  void refresh() {
    try {
      @Nullable GaugeStudy found = studies().runningAt(settings.name()).orElse(null);
      List<StudyMeasurement> counted = found == null ? List.of() : studies().counted(found.id());
      measured.clear();
      counted.forEach(each -> measured.put(each.step(), each.captured().wallMicros()));
      running = found;
      findNext();
    } catch (StoreException e) {
      LOG.warn("The studies can't be read; going on with what is known: {}", e.getMessage());
    }
  }

  private void isOpenAgain(int step) {
    measured.remove(step);
    findNext();
  }

  private synchronized void findNext() {
    @Nullable GaugeStudy study = running;
    int step = 1;
    while (measured.containsKey(step)) {
      step++;
    }
    next = study == null || step > study.design().steps() ? 0 : step;
  }

  boolean isRunning() {
    return running != null;
  }

  /** The study that is running, and its next step; null if none. */
  StationStatus.@Nullable StudyNow now() {
    @Nullable GaugeStudy study = running;
    return study == null
        ? null
        : new StationStatus.StudyNow(study.id(), next, study.design().steps());
  }

  void contactEnded() {
    ofContact = null;
  }

  /** The value went on moving: what was taken is dropped, and its step is to be measured again. */
  void withdrawn(Sentence why) {
    CompletableFuture<StudyMeasurement> taken = ofContact;
    ofContact = null;
    if (taken != null) {
      var unused =
          taken.thenAccept(each -> around.incidents().run(() -> drop(each, why.toString())));
    }
  }

  private void drop(StudyMeasurement taken, String why) {
    studies().drop(taken.id(), why, around.clock().wallMicros(), settings.name());
    isOpenAgain(taken.step());
    changed.run();
  }

  /** A measurement of the next step, or why it is none; the future is done when it is stored. */
  CompletableFuture<TriggerAnswer> take(CapturedDepth depth, WorkSnapshot work, boolean zeroMoved) {
    GaugeStudy study = running;
    if (study == null || next == 0) {
      return refuse(
          depth, Reason.STUDY_COMPLETE, Sentence.plain("finish the study, or go back to the job"));
    }
    if (tooSoon(study, depth)) {
      return refuse(
          depth,
          Reason.STUDY_NEXT_DAY,
          Sentence.plain("the next day begins 8 hours after the last one, or later"));
    }
    Rejected rejected = StudyRefusals.ofGauge(settings.zero(), depth, work, zeroMoved);
    if (rejected != null) {
      return CompletableFuture.completedFuture(new TriggerAnswer.Refused(rejected));
    }
    long depthNm = depth.valueNm() - work.zeroNm();
    try {
      WorkSnapshot.Computed own = computedFor(study, work);
      RadiusEstimate radius = own.model().estimate(depthNm, depth.scatterNm(), depth.sampleCount());
      return StudyRefusals.far(radius, study)
          ? refuse(depth, Reason.FAR_FROM_TARGET, StudyRefusals.farWords(radius, study))
          : keep(study, own.setUpId(), depth, depthNm, radius);
    } catch (BadInput e) {
      return refuse(depth, Reason.WRONG_FACE, e.said());
    } catch (StoreException e) {
      lost(depth, e);
      return CompletableFuture.failedFuture(e);
    }
  }

  private boolean tooSoon(GaugeStudy study, CapturedDepth depth) {
    @Nullable Long before = measured.get(next - 1);
    return study.design().beginsDay(next)
        && before != null
        && depth.wallMicros() - before < GaugeStudy.NEXT_DAY_MICROS;
  }

  private WorkSnapshot.Computed computedFor(GaugeStudy study, WorkSnapshot work) {
    GaugeStudy.Subject subject = study.subject();
    @Nullable Bridge bridge = work.bridge();
    if (bridge == null) {
      throw new BadInput("bridge", "none", "is on the station", "mount one first");
    }
    SetUp setUp =
        new SetUp(
            bridge,
            settings.indicator(),
            work.zero(),
            work.calibration(),
            subject.section(),
            subject.measuredFace(),
            subject.specification().face());
    WorkSnapshot.@Nullable Computed known = computed;
    if (known == null || !known.setUp().equals(setUp)) {
      long id = around.store().readings().keep(setUp);
      known = new WorkSnapshot.Computed(id, setUp, RadiusModel.of(setUp));
      computed = known;
    }
    return known;
  }

  private static CompletableFuture<TriggerAnswer> refuse(
      CapturedDepth depth, Reason reason, Sentence detail) {
    return CompletableFuture.completedFuture(
        new TriggerAnswer.Refused(new Rejected(reason, depth.monotonicNanos(), detail)));
  }

  private CompletableFuture<TriggerAnswer> keep(
      GaugeStudy study, long setUpId, CapturedDepth depth, long depthNm, RadiusEstimate radius) {
    StudyMeasurement taken =
        new StudyMeasurement(
            0,
            study.id(),
            next,
            depth,
            depthNm,
            new StudyMeasurement.Result(
                setUpId, radius.curvaturePerMm(), radius.standardUncertaintyPerMm()));
    measured.put(next, depth.wallMicros());
    findNext();
    RequestKey key = RequestKey.current();
    CompletableFuture<StudyMeasurement> kept =
        CompletableFuture.supplyAsync(() -> RequestKey.during(key, () -> studies().add(taken)))
            .whenComplete((done, failure) -> settled(taken, failure));
    ofContact = kept;
    return kept.thenApply(TriggerAnswer.Studied::new);
  }

  private void settled(StudyMeasurement taken, @Nullable Throwable failure) {
    if (failure != null) {
      isOpenAgain(taken.step());
      lost(taken.captured(), failure);
    }
    changed.run();
  }

  private void lost(CapturedDepth depth, Throwable failure) {
    LOG.atError()
        .addKeyValue("station", settings.name())
        .setCause(failure)
        .log("a measurement of a study is lost");
    long at = depth.wallMicros();
    String detail = "A measurement of a study could not be stored: " + failure;
    Incident.Kind kind = Incident.Kind.READINGS_DROPPED;
    around.incidents().add(new Incident(0, settings.name(), kind, at, at, 1, detail));
  }
}
