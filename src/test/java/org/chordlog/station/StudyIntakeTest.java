package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.CapturedDepth;
import org.chordlog.measure.GaugeStudy;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.chordlog.store.RequestKey;
import org.chordlog.store.StoreException;
import org.chordlog.store.StudiesContract;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A measurement of a study, given to a station's part for it without the station. */
final class StudyIntakeTest {
  private static final String NAME = "A";

  /** On 1,800 mm, 200 mm between feet of no radius. */
  private static final long DEPTH_NM = 2_780_000;

  @TempDir Path directory;
  private StationRig rig;
  private IncidentLog incidents;
  private StudyIntake intake;
  private WorkSnapshot work;
  private long study;

  @BeforeEach
  void begin() {
    rig = new StationRig(directory);
    StationSettings settings = rig.settings(NAME, StationRig.settled(), ZeroRule.DEFAULT);
    rig.stations.add(settings);
    long now = StationClock.system().wallMicros();
    long bridge = rig.store.gauges().mountedOn(NAME).orElseThrow().id();
    Recorded by = new Recorded(now, "me");
    Zero unused = rig.store.gauges().add(new Zero(0, NAME, bridge, 0, 500, 20, by));
    study = rig.store.studies().add(StudiesContract.crossed(NAME)).id();
    rig.store.studies().become(study, GaugeStudy.State.RUNNING, "me", "start");
    incidents = new IncidentLog(rig.store.incidents());
    intake =
        new StudyIntake(
            settings,
            new StationContext(rig.store, StationClock.system(), new Announcer(), incidents),
            () -> {});
    intake.refresh();
    work = new WorkReader(NAME, StationRig.INDICATOR, rig.store).read(WorkSnapshot.NONE);
  }

  @AfterEach
  void end() {
    incidents.close();
    rig.close();
  }

  @Test
  void itCarriesTheKeyOfTheRequestThatAskedForIt() {
    TriggerAnswer unused = intake.take(depth(), work, false).join();
    RequestKey key = new RequestKey("a-key-of-this-test", "a request");
    TriggerAnswer answer = RequestKey.during(key, () -> intake.take(depth(), work, false)).join();
    assertInstanceOf(TriggerAnswer.Studied.class, answer, answer::toString);
    assertEquals(2, rig.store.studies().counted(study).size());
    assertTrue(rig.store.answeredRequests().find(key.key()).isPresent());
  }

  /** The thread of the station goes on. */
  @Test
  void whereTheStoreTakesNothingItIsLostAndSaidToBe() {
    rig.store.close();
    CompletableFuture<TriggerAnswer> lost = intake.take(depth(), work, false);
    CompletionException e = assertThrows(CompletionException.class, lost::join);
    assertInstanceOf(StoreException.class, e.getCause());
  }

  private static CapturedDepth depth() {
    long now = StationClock.system().wallMicros();
    return new CapturedDepth(
        CaptureMode.SETTLED,
        DEPTH_NM,
        1_500,
        12,
        new CapturedDepth.SampleRange(40, 52),
        new CapturedDepth.Moment(System.nanoTime(), now));
  }
}
