package org.chordlog.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.Face;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.GaugeStudy.Kind;
import org.chordlog.measure.GaugeStudy.State;
import org.chordlog.measure.Job;
import org.chordlog.measure.Master;
import org.chordlog.measure.Section;
import org.chordlog.measure.Specification;
import org.chordlog.measure.StudyMeasurement;
import org.junit.jupiter.api.Test;

/** Studies of the gauge and their measurements. */
public abstract class StudiesContract extends StoreContract {
  protected StudiesContract(Opener opener) {
    super(opener);
  }

  /** Two pieces, two operators, two repeats. */
  public static GaugeStudy crossed(String station) {
    Job job = Some.job("J", "M");
    return new GaugeStudy(
        0,
        station,
        "hoops in spring",
        new GaugeStudy.Design(
            Kind.CROSSED, List.of("1", "2"), List.of(), List.of("Ann", "Żak"), 2, 42),
        new GaugeStudy.Subject(job.section(), job.measuredFace(), job.specification(), List.of()),
        State.PAUSED,
        new GaugeStudy.Made(Some.T0, "me"));
  }

  private static GaugeStudy onMasters() {
    Master master = new Master(7, "R 1800", Face.OUTER, 1800.25, 0.2);
    return new GaugeStudy(
        0,
        "A",
        "bias",
        new GaugeStudy.Design(Kind.BIAS, List.of("R 1800"), List.of(), List.of("Ann"), 10, -1),
        new GaugeStudy.Subject(
            new Section.Flat(1, 1),
            Face.OUTER,
            new Specification(Face.OUTER, 1800.25, null, null),
            List.of(master)),
        State.PAUSED,
        new GaugeStudy.Made(Some.T0, "me"));
  }

  private StudyMeasurement measurement(long study, int step) {
    long setUp = store.readings().keep(Some.setUp(bridge()));
    return new StudyMeasurement(
        0,
        study,
        step,
        new CapturedDepth(
            CaptureMode.SETTLED,
            -9_580_000 - step,
            1_500,
            12,
            new CapturedDepth.SampleRange(40L * step, 40L * step + 11),
            new CapturedDepth.Moment(step * 1_000_000_007L, Some.T0 + step)),
        2_760_000 + step,
        new StudyMeasurement.Result(setUp, 1.0 / (1800 + step), 1e-6 / 3));
  }

  private org.chordlog.measure.Bridge bridge() {
    return store.gauges().bridges().stream()
        .findFirst()
        .orElseGet(() -> store.gauges().add(Some.bridge("200"), "me"));
  }

  private GaugeStudy running() {
    GaugeStudy kept = store.studies().add(crossed("A"));
    return store.studies().become(kept.id(), State.RUNNING, "me", "start");
  }

  @Test
  void studiesComeBackAsTheyWereTheNewestFirst() {
    GaugeStudy first = store.studies().add(crossed("A"));
    GaugeStudy second = store.studies().add(onMasters());
    reopen();
    assertEquals(List.of(second, first), store.studies().list(Long.MAX_VALUE, 10));
    assertEquals(List.of(first), store.studies().list(second.id(), 10));
    assertEquals(crossed("A").withId(first.id()), store.studies().find(first.id()).orElseThrow());
    assertEquals(Optional.empty(), store.studies().find(99));
  }

  @Test
  void oneStudyRunsAtAStationAndGoesOnAfterARestart() {
    GaugeStudy study = running();
    GaugeStudy other = store.studies().add(crossed("A"));
    GaugeStudy elsewhere = store.studies().add(crossed("B"));
    BadInput e =
        assertThrows(
            BadInput.class, () -> store.studies().become(other.id(), State.RUNNING, "me", ""));
    assertTrue(Objects.requireNonNull(e.getMessage()).contains("running at A"), e.getMessage());
    store.studies().become(elsewhere.id(), State.RUNNING, "me", "");
    reopen();
    assertEquals(Optional.of(study), store.studies().runningAt("A"));
    store.studies().become(study.id(), State.PAUSED, "me", "weekend");
    assertEquals(Optional.empty(), store.studies().runningAt("A"));
    assertEquals("weekend", store.changes().list(Long.MAX_VALUE, 1).get(0).why());
  }

  @Test
  void whatHasEndedStaysEnded() {
    GaugeStudy study = running();
    store.studies().become(study.id(), State.DONE, "me", "");
    for (State state : State.values()) {
      assertThrows(
          BadInput.class, () -> store.studies().become(study.id(), state, "me", "once more"));
    }
    assertThrows(BadInput.class, () -> store.studies().add(measurement(study.id(), 1)));
    assertThrows(BadInput.class, () -> store.studies().become(99, State.RUNNING, "me", ""));
  }

  @Test
  void measurementsComeByTheirStepsAndADroppedOneFreesItsStep() {
    long study = running().id();
    StudyMeasurement second = store.studies().add(measurement(study, 2));
    StudyMeasurement first = store.studies().add(measurement(study, 1));
    assertThrows(BadInput.class, () -> store.studies().add(measurement(study, 1)));
    assertThrows(BadInput.class, () -> store.studies().add(measurement(study, 9)));
    store.studies().drop(second.id(), "slipped", Some.T0, "me");
    reopen();
    assertEquals(List.of(first), store.studies().counted(study));
    StudyMeasurement again = store.studies().add(measurement(study, 2));
    assertEquals(List.of(first, again), store.studies().counted(study));
    assertThrows(BadInput.class, () -> store.studies().drop(second.id(), "slipped", Some.T0, "me"));
    assertEquals(measurement(study, 2).withId(again.id()), again);
  }

  @Test
  void measurementsAreNoReadingsOfAJob() {
    long study = running().id();
    store.studies().add(measurement(study, 1));
    assertEquals(List.of(), store.readings().all(0, 10));
  }
}
