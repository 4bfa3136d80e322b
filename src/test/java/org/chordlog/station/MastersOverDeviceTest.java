package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Calibration;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Face;
import org.chordlog.measure.InterimCheck;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Master;
import org.chordlog.measure.Reading;
import org.chordlog.simulator.PseudoTerminal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** Calibration and interim check of a station whose feet truly stand 200.2 mm apart. */
@Tag("slow")
final class MastersOverDeviceTest {
  private static final String NAME = "rolls-1";
  private static final double TRUE_HALF_MM = 100.1;
  private static final long YEAR_MICROS = 31_536_000_000_000L;

  @TempDir private Path directory;
  private StationRig rig;
  private PseudoTerminal terminal;
  private Hand hand;
  private StationActions actions;
  private MasterActions masters;

  @BeforeEach
  void start() throws Exception {
    rig = new StationRig(directory);
    terminal = rig.plugIn(NAME);
    rig.open(NAME, StationRig.settled(), ZeroRule.DEFAULT);
    hand = new Hand(rig, NAME, terminal);
    actions = rig.stations.at(NAME);
    masters = rig.stations.mastersAt(NAME);
    hand.standOn(0);
    actions.takeZero("tester");
  }

  @AfterEach
  void stop() throws Exception {
    hand.close();
    rig.close();
    terminal.close();
  }

  private static double depthMm(double radiusMm) {
    return radiusMm - Math.sqrt(radiusMm * radiusMm - TRUE_HALF_MM * TRUE_HALF_MM);
  }

  private Master master(double radiusMm) {
    return rig.store.gauges().add(new Master(0, "R" + radiusMm, Face.OUTER, radiusMm, 0.02), "me");
  }

  @WaitingTest
  void theFitOfTwoMastersIsKeptAndUsed() throws Exception {
    rig.startJob(NAME);
    for (double radius : List.of(1_000.0, 1_500.0)) {
      Master master = master(radius);
      hand.standOn(depthMm(radius));
      masters.read(master.id(), "tester");
    }
    assertEquals(200.2, masters.fit().spanMm(), 0.05);
    long due = StationClock.system().wallMicros() + YEAR_MICROS;
    Calibration kept = masters.keep(due, "tester");
    assertEquals(kept, rig.store.gauges().latestCalibration(NAME, kept.bridgeId()).orElseThrow());
    assertTrue(masters.readings().isEmpty());
    int before = rig.taken().size();
    hand.touch(depthMm(1_200));
    Await.until(() -> rig.taken().size() == before + 1);
    Reading reading = rig.taken().get(before);
    assertFalse(reading.marks().contains(Mark.CALIBRATION_MISSING), reading.toString());
    assertEquals(1_200, 1 / reading.radius().curvaturePerMm(), 0.5);
  }

  @WaitingTest
  void whatAMasterGaveAsAReadingOfTheJobIsExcluded() throws Exception {
    Job job = rig.startJob(NAME);
    Master master = master(1_000);
    hand.standOn(depthMm(1_000));
    Await.until(() -> rig.taken().size() == 1);
    masters.read(master.id(), "tester");
    List<Exclusion> excluded = rig.store.readings().exclusionsOfJob(job.id());
    assertEquals(rig.taken().get(0).id(), excluded.get(0).readingId());
    assertEquals(new Place(1, "start"), Place.of(rig.taken().get(0)));
    assertEquals("start", rig.stations.status(NAME).position());
  }

  @WaitingTest
  void aMasterNeverCountsAsAPieceWheneverItIsRead() throws Exception {
    Job job = rig.startJob(NAME);
    Master master = master(1_000);
    for (int settled : new int[] {60, 80, 100, 120, 140, 160}) {
      hand.hold(StationRig.FREE_AIR_MM, 100);
      hand.hold(depthMm(1_000), settled);
      masters.read(master.id(), "tester");
      hand.hold(depthMm(1_000), 150);
    }
    hand.touch(depthMm(1_200));
    Await.until(() -> counted(job).size() == 1);
    assertEquals(1_200, 1 / counted(job).get(0).radius().curvaturePerMm(), 5);
    assertEquals(1, counted(job).get(0).piece());
  }

  private List<Reading> counted(Job job) {
    Set<Long> excluded =
        rig.store.readings().exclusionsOfJob(job.id()).stream()
            .map(Exclusion::readingId)
            .collect(Collectors.toSet());
    return rig.store.readings().ofJob(job.id(), 0, 100).stream()
        .filter(reading -> !excluded.contains(reading.id()))
        .toList();
  }

  @WaitingTest
  void aFailedCheckIsKeptAndMarksWhatFollows() throws Exception {
    rig.startJob(NAME);
    Master master = master(1_000);
    hand.standOn(depthMm(1_000));
    InterimCheck failed = masters.check(master.id(), 0.5, "tester");
    assertFalse(failed.passed(), "nominal span is 0.2 mm short: 2 mm of radius");
    assertTrue(masters.check(master.id(), 5, "tester").passed());
    masters.check(master.id(), 0.5, "tester");
    int before = rig.taken().size();
    hand.touch(depthMm(1_000));
    Await.until(() -> rig.taken().size() == before + 1);
    assertTrue(rig.taken().get(before).marks().contains(Mark.CHECK_FAILED));
  }

  @WaitingTest
  void aMasterThatReadsFlatFailsWithoutARadius() throws Exception {
    Master master = master(1_000);
    hand.standOn(0);
    InterimCheck failed = masters.check(master.id(), 1e6, "tester");
    assertFalse(failed.passed(), failed.toString());
    assertNull(failed.radiusMm());
    assertEquals(failed, rig.store.gauges().checks(NAME, failed.bridgeId(), 1).get(0));
  }

  @WaitingTest
  void nothingReadFitsNothingAndAnUnknownMasterIsRefused() {
    assertThrows(BadInput.class, () -> masters.fit());
    assertThrows(BadInput.class, () -> masters.read(99, "tester"));
    assertThrows(BadInput.class, () -> masters.check(99, 1, "tester"));
  }
}
