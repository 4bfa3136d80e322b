package org.chordlog.station;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.capture.Capture;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Circumstances;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.measure.ReadingKind;
import org.chordlog.measure.Zero;
import org.chordlog.simulator.PseudoTerminal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** From bytes on a real device to committed readings. */
@Tag("slow")
final class StationOverDeviceTest {
  /** Values of one rest, see {@code RestWindowTest}. */
  private static final int GOOD_ENOUGH = 37;

  /** Depth on 1,000 mm, 200 mm between feet of no radius: R - sqrt(R² - 100²). */
  private static final double DEPTH_MM = 5.0126;

  private static final String NAME = "rolls-1";

  @TempDir private Path directory;
  private StationRig rig;
  private PseudoTerminal terminal;
  private Hand hand;

  @BeforeEach
  void start() throws Exception {
    rig = new StationRig(directory);
    terminal = rig.plugIn(NAME);
    rig.open(NAME, StationRig.settled(), ZeroRule.DEFAULT);
    hand = new Hand(rig, NAME, terminal);
  }

  @AfterEach
  void stop() throws Exception {
    hand.close();
    rig.close();
    terminal.close();
  }

  private Zero zeroAt(double mm) throws Exception {
    hand.standOn(mm);
    return rig.stations.at(NAME).takeZero("tester");
  }

  private void touch(double mm, int readingsThen) throws Exception {
    hand.touch(mm);
    Await.until(() -> rig.taken().size() == readingsThen);
  }

  @WaitingTest
  void aPlungerAtRestBecomesACommittedReading() throws Exception {
    Job job = rig.startJob(NAME);
    Zero zero = zeroAt(0.1);
    assertEquals(100_000, zero.valueNm());
    touch(0.1 + DEPTH_MM, 1);
    Reading reading = rig.taken().get(0);
    assertEquals(reading, rig.store.readings().find(reading.id()).orElseThrow());
    assertEquals(job.id(), reading.jobId());
    assertEquals(1, reading.stationSequence());
    assertEquals(DEPTH_MM, reading.depthNm() / 1e6, 0.001);
    assertEquals(1_000, 1 / reading.radius().curvaturePerMm(), 0.3);
    assertEquals(Set.of(Mark.CALIBRATION_MISSING), reading.marks());
    assertEquals(
        new Circumstances(ReadingKind.PRODUCT, 1, job.revision(), null, "lot 1"),
        reading.circumstances());
    assertEquals(DEPTH_MM + 0.1, shown(reading.rawHex()), 0.001);
    assertEquals(zero, rig.store.readings().setUp(reading.setUpId()).orElseThrow().zero());
  }

  private static double shown(String rawHex) {
    return Double.parseDouble(new String(HexFormat.of().parseHex(rawHex), US_ASCII).strip());
  }

  @WaitingTest
  void aFlatIsNoReadingOfTheJob() throws Exception {
    rig.startJob(NAME);
    zeroAt(0.2);
    hand.touch(0.2);
    Await.until(
        () -> rig.stations.status(NAME).counts().rejections().getOrDefault(Reason.FLAT, 0L) == 1);
    touch(0.2 + DEPTH_MM, 1);
    assertEquals(1, rig.taken().get(0).piece());
  }

  /**
   * 17 µm from value to value; limits ± 10 mm are worth 100 µm of depth, ± 1 mm 10 µm. Of {@value
   * #GOOD_ENOUGH} values, twice as many as come in a rest, the mean is good enough for those too
   * ({@code RestWindowTest}): a busy machine may read so many in a lump.
   */
  @WaitingTest
  void howMuchARestMayScatterFollowsTheToleranceOfTheJob() throws Exception {
    rig.startJob(NAME, 10);
    zeroAt(0);
    hand.shake(0.017);
    touch(DEPTH_MM, 1);
    Reading wide = rig.taken().get(0);
    assertEquals(0.0085, wide.captured().scatterNm() / 1e6, 0.001);
    rig.startJob(NAME, 1);
    Await.until(this::vibratesWhenTouched);
    List<Reading> taken = rig.taken();
    assertTrue(
        taken.stream().skip(1).allMatch(each -> samples(each) >= GOOD_ENOUGH), taken::toString);
    rig.startJob(NAME, 10);
    touch(DEPTH_MM, taken.size() + 1);
  }

  private static int samples(Reading reading) {
    return reading.captured().sampleCount();
  }

  /** A busy machine may read too little of one rest to say that it scatters. */
  private boolean vibratesWhenTouched() throws Exception {
    hand.touch(DEPTH_MM);
    return rig.stations.status(NAME).counts().rejections().containsKey(Reason.VIBRATES);
  }

  @WaitingTest
  void everySampleIsLogged() throws Exception {
    hand.hold(1.5, 50);
    Await.until(() -> rig.store.traces().lastSequence(NAME) >= 50);
    assertEquals(50, rig.store.traces().range(NAME, 1, 50, 100).size());
    assertEquals(1_500_000, rig.store.traces().range(NAME, 50, 50, 1).get(0).valueNm());
  }

  @WaitingTest
  void readingsGoAlongThePlanAndUndoGoesBack() throws Exception {
    Job job = rig.startJob(NAME);
    zeroAt(0);
    touch(DEPTH_MM, 1);
    touch(DEPTH_MM, 2);
    touch(DEPTH_MM, 3);
    rig.stations.at(NAME).undoLast(rig.store.readings().lastId(), "slipped", "tester");
    assertEquals(2, rig.stations.status(NAME).piece());
    assertEquals("start", rig.stations.status(NAME).position());
    assertEquals(new Place(2, "start"), new JobPlace(rig.store).of(job), "after a restart");
    touch(DEPTH_MM, 4);
    assertEquals(new Place(3, "start"), rig.stations.at(NAME).nextPiece());
    List<Place> places = rig.taken().stream().map(Place::of).toList();
    assertEquals(
        List.of(
            new Place(1, "start"),
            new Place(1, "end"),
            new Place(2, "start"),
            new Place(2, "start")),
        places);
  }

  @WaitingTest
  void zeroIsRefusedInFreeAirAndWhileThePlungerMoves() throws Exception {
    hand.hold(StationRig.FREE_AIR_MM, 60);
    Await.until(() -> phase() == Capture.Phase.FREE);
    assertThrows(BadInput.class, () -> rig.stations.at(NAME).takeZero("tester"));
    hand.shake(0.1);
    hand.hold(1, 60);
    BadInput moving = assertThrows(BadInput.class, () -> rig.stations.at(NAME).takeZero("tester"));
    String problem = moving.faults().get(0).problem().toString();
    assertTrue(problem.contains("moves") || problem.contains("scatter"), problem);
    assertTrue(rig.store.gauges().latestZero(NAME).isEmpty());
  }

  private Capture.Phase phase() {
    return rig.heard.stream()
        .filter(Announcement.Live.class::isInstance)
        .map(each -> ((Announcement.Live) each).phase())
        .reduce(Capture.Phase.MOVING, (before, after) -> after);
  }

  @WaitingTest
  void withoutZeroOrJobNothingIsStoredAndTheReasonIsCounted() throws Exception {
    hand.touch(DEPTH_MM);
    Await.until(() -> !rig.stations.status(NAME).counts().rejections().isEmpty());
    assertEquals("{NO_JOB=1}", rig.stations.status(NAME).counts().rejections().toString());
    rig.startJob(NAME);
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.stations.status(NAME).counts().rejections().size() == 2);
    assertEquals(0, rig.store.readings().lastId());
  }

  @WaitingTest
  void restartGoesOnWithTheSameJobPlaceAndSequence() throws Exception {
    Job job = rig.startJob(NAME);
    zeroAt(0);
    touch(DEPTH_MM, 1);
    assertEquals(new Place(2, "start"), rig.stations.at(NAME).nextPiece());
    hand.close();
    rig.close();
    rig = new StationRig(directory);
    rig.open(NAME, StationRig.settled(), ZeroRule.DEFAULT);
    hand = new Hand(rig, NAME, terminal);
    assertEquals(job.id(), rig.stations.status(NAME).jobId());
    touch(DEPTH_MM, 1);
    Reading second = rig.taken().get(0);
    assertEquals(2, second.stationSequence());
    assertEquals(new Place(2, "start"), Place.of(second));
    assertTrue(second.captured().firstSequence() > 91, second.toString());
  }
}
