package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Objects;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Incident;
import org.chordlog.measure.Job;
import org.chordlog.measure.Lengths;
import org.chordlog.measure.Mark;
import org.chordlog.simulator.PseudoTerminal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** A key of the indicator pressed in the middle of a job, on a real device. */
@Tag("slow")
final class StreamGuardTest {
  private static final double DEPTH_MM = 5.0126;
  private static final String NAME = "rolls-1";

  @TempDir private Path directory;
  private StationRig rig;
  private PseudoTerminal terminal;
  private Hand hand;
  private Job job;

  @BeforeEach
  void start() throws Exception {
    rig = new StationRig(directory);
    terminal = rig.plugIn(NAME);
    rig.open(NAME, StationRig.settled(), ZeroRule.DEFAULT);
    hand = new Hand(rig, NAME, terminal);
    job = rig.startJob(NAME);
    hand.standOn(0);
    var unused = rig.stations.at(NAME).takeZero("tester");
  }

  @AfterEach
  void stop() throws Exception {
    hand.close();
    rig.close();
    terminal.close();
  }

  private void pieces(int count) throws Exception {
    int before = rig.taken().size();
    for (int i = 1; i <= count; i++) {
      int then = before + i;
      hand.touch(DEPTH_MM);
      Await.until(() -> rig.taken().size() == then);
    }
  }

  @WaitingTest
  void aMovedZeroIsVoidAndMarksWhatComesUntilItIsTakenAgain() throws Exception {
    pieces(5);
    assertNull(rig.stations.status(NAME).doubt());
    hand.offset(-0.12);
    hand.hold(StationRig.FREE_AIR_MM, 60);
    Await.until(() -> rig.stations.status(NAME).zeroMoved());
    String doubt = String.valueOf(rig.stations.status(NAME).doubt());
    assertTrue(doubt.contains("set zero"), doubt);
    pieces(1);
    assertTrue(rig.taken().get(5).marks().contains(Mark.ZERO_MOVED), rig.taken().toString());
    Await.until(
        () ->
            rig.store.incidents().ofStation(NAME, Long.MAX_VALUE, 9).stream()
                .anyMatch(each -> each.kind() == Incident.Kind.ZERO_MOVED));
    hand.standOn(0);
    var unused = rig.stations.at(NAME).takeZero("tester");
    assertFalse(rig.stations.status(NAME).zeroMoved());
    assertNull(rig.stations.status(NAME).doubt());
  }

  @WaitingTest
  void aReadingBetweenTheLastGoodFreeAirAndTheNoticeIsTakenOut() throws Exception {
    pieces(5);
    hand.hold(DEPTH_MM, 60);
    Await.until(() -> rig.taken().size() == 6);
    hand.offset(-0.12);
    hand.hold(StationRig.FREE_AIR_MM, 60);
    Await.until(() -> rig.stations.status(NAME).zeroMoved());
    long doubtful = rig.taken().get(5).id();
    Await.until(
        () ->
            rig.store.readings().exclusionsOfJob(rig.taken().get(5).jobId()).stream()
                .anyMatch(each -> each.readingId() == doubtful && each.excluded()));
  }

  @WaitingTest
  void aChangedDirectionIsRefusedUntilItIsSetBack() throws Exception {
    pieces(5);
    hand.reverse(true);
    hand.hold(StationRig.FREE_AIR_MM, 60);
    Await.until(() -> rig.stations.status(NAME).doubt() != null);
    hand.touch(DEPTH_MM);
    Await.until(
        () ->
            rig.stations.status(NAME).counts().rejections().getOrDefault(Reason.SETTING_CHANGED, 0L)
                > 0);
    assertEquals(5, rig.taken().size());
    hand.hold(StationRig.FREE_AIR_MM, 60);
    hand.reverse(false);
    hand.hold(StationRig.FREE_AIR_MM, 60);
    Await.until(() -> rig.stations.status(NAME).doubt() == null);
    pieces(1);
  }

  @WaitingTest
  void aDepthFarFromTheTargetAsksBeforeItCounts() throws Exception {
    hand.touch(1);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    assertEquals(0, rig.taken().size());
    assertInstanceOf(TriggerAnswer.Taken.class, rig.stations.at(NAME).confirm("tester"));
    assertNull(rig.stations.status(NAME).question());
    hand.hold(StationRig.FREE_AIR_MM, 30);
    hand.hold(1.1, 150);
    Await.until(() -> rig.taken().size() == 2);
  }

  @WaitingTest
  void aDepthFarFromTheTargetMayBeAPieceOfAnotherJob() throws Exception {
    long first = job.id();
    long flatter = rig.job(NAME, 5_000, 500).id();
    hand.touch(1);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    assertEquals(
        OpenQuestion.Kind.FAR_FROM_TARGET,
        Objects.requireNonNull(rig.stations.status(NAME).question()).kind());
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).another(null));
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).another(first));
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).another(99_999L));
    assertInstanceOf(TriggerAnswer.Taken.class, rig.stations.at(NAME).another(flatter));
    assertNull(rig.stations.status(NAME).question());
    assertEquals(flatter, rig.taken().get(0).jobId());
    assertEquals(flatter, rig.stations.status(NAME).jobId());
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).another(flatter));
  }

  @WaitingTest
  void aPieceOfAnotherJobIsAskedAboutAgainWhereItIsFarFromThatTargetToo() throws Exception {
    long tighter = rig.job(NAME, 500, 5).id();
    hand.touch(1);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    assertInstanceOf(TriggerAnswer.Refused.class, rig.stations.at(NAME).another(tighter));
    OpenQuestion again = Objects.requireNonNull(rig.stations.status(NAME).question());
    assertTrue(again.sentence().in(Lengths.MM).contains("500"), again.toString());
    assertEquals(0, rig.taken().size());
  }

  @WaitingTest
  void aLaterRestMayBeTheNextPlaceToBeMeasured() throws Exception {
    hand.hold(StationRig.FREE_AIR_MM, 60);
    hand.hold(DEPTH_MM + 0.2, 60);
    Await.until(() -> rig.taken().size() == 1);
    hand.hold(DEPTH_MM, 120);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    OpenQuestion asked = Objects.requireNonNull(rig.stations.status(NAME).question());
    assertEquals(OpenQuestion.Kind.LATER_REST, asked.kind());
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).another(job.id()));
    assertInstanceOf(TriggerAnswer.Taken.class, rig.stations.at(NAME).another(null));
    assertEquals(2, rig.taken().size());
    assertEquals("start", rig.taken().get(0).position());
    assertEquals("end", rig.taken().get(1).position());
    assertEquals(DEPTH_MM, rig.taken().get(1).depthNm() / 1e6, 0.001);
    assertTrue(rig.store.readings().exclusionsOfJob(job.id()).isEmpty());
  }

  @WaitingTest
  void aDeclinedDepthIsNotRecordedAndTheNextOneLikeItIsAskedAboutAgain() throws Exception {
    hand.touch(1);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    rig.stations.at(NAME).decline();
    assertNull(rig.stations.status(NAME).question());
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).confirm("tester"));
    hand.touch(1);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    assertEquals(0, rig.taken().size());
  }

  @WaitingTest
  void aLongerLaterRestReplacesTheFirstWhenTheOperatorSaysSo() throws Exception {
    hand.hold(StationRig.FREE_AIR_MM, 60);
    hand.hold(DEPTH_MM + 0.2, 60);
    Await.until(() -> rig.taken().size() == 1);
    hand.hold(DEPTH_MM, 120);
    Await.until(() -> rig.stations.status(NAME).question() != null);
    assertInstanceOf(TriggerAnswer.Taken.class, rig.stations.at(NAME).confirm("tester"));
    assertEquals(2, rig.taken().size());
    assertEquals(Place.of(rig.taken().get(0)), Place.of(rig.taken().get(1)));
    assertEquals(DEPTH_MM, rig.taken().get(1).depthNm() / 1e6, 0.001);
  }
}
