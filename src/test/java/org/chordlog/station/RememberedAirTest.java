package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.chordlog.Await;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.CaptureOptionsBuilder;
import org.chordlog.capture.Direction;
import org.chordlog.decode.BuiltInProfile;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Exclusion;
import org.chordlog.measure.Job;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * What is done to the indicator while nothing reads it: free air is not what it was at the zero.
 */
final class RememberedAirTest extends HandTest {
  private static final double DEPTH_MM = 4.9;

  /** Free air is learned. */
  private static final CaptureOptions SETTLED =
      new CaptureOptionsBuilder(CaptureMode.SETTLED).restSeconds(0.05).leastSamples(5).build();

  private Job job;

  @BeforeEach
  void zeroed() throws Exception {
    var unusedBegin = begin(ZeroRule.DEFAULT);
    hand.standOn(0);
    var unused = rig.stations.at(NAME).takeZero("tester");
    job = rig.startJob(NAME);
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.taken().size() == 1);
  }

  /** The station starts anew as the program does: it knows what is stored. */
  private void restart(StationSettings with, Runnable meanwhile) throws Exception {
    hand.hold(StationRig.FREE_AIR_MM, 30);
    rig.stations.remove(NAME, StationKeeper.forThisRun());
    meanwhile.run();
    rig.stations.add(with);
    Await.until(() -> rig.stations.status(NAME).link() == StationStatus.LinkState.OPEN);
  }

  private StationSettings settings(Direction direction) {
    return StationSettings.of(
            NAME,
            SerialSettings.of(rig.port(NAME).toString()),
            BuiltInProfile.SIGNED_MM_LINES.profile(),
            StationRig.INDICATOR)
        .machine("bender")
        .bridge(StationRig.BRIDGE)
        .capture(SETTLED)
        .direction(direction)
        .silenceSeconds(0.0)
        .build();
  }

  private void touch(int times) throws Exception {
    for (int i = 0; i < times; i++) {
      hand.touch(DEPTH_MM);
    }
  }

  private void awaitDoubt(String of) throws Exception {
    Await.until(() -> rig.stations.status(NAME).doubt() != null);
    String doubt = String.valueOf(rig.stations.status(NAME).doubt());
    assertTrue(doubt.contains(of), doubt);
  }

  /** All since the restart; later ones carry a mark. */
  private void awaitTheOthersTakenOut() throws Exception {
    List<Long> others =
        rig.taken().stream()
            .skip(1)
            .filter(each -> !each.marks().contains(Mark.ZERO_MOVED))
            .map(Reading::id)
            .toList();
    assertFalse(others.isEmpty());
    Await.until(() -> excluded().containsAll(others));
    assertEquals(others.size(), excluded().size());
  }

  private List<Long> excluded() {
    return rig.store.readings().exclusionsOfJob(job.id()).stream()
        .map(Exclusion::readingId)
        .toList();
  }

  @Test
  void aZeroThatMovedMeanwhileIsVoidAndReadingsSinceTheStartAreTakenOut() throws Exception {
    restart(settings(Direction.COUNTS_UP), () -> hand.offset(0.35));
    touch(4);
    hand.hold(DEPTH_MM, 60);
    awaitDoubt("−5.650 mm instead of −6.000 mm in free air");
    awaitTheOthersTakenOut();
  }

  @Test
  void aChangedDirectionIsToldByTheThirdPiece() throws Exception {
    restart(settings(Direction.COUNTS_UP), () -> hand.reverse(true));
    touch(3);
    awaitDoubt("counting direction was changed");
    awaitTheOthersTakenOut();
    hand.reverse(false);
    hand.hold(StationRig.FREE_AIR_MM, 60);
    Await.until(() -> rig.stations.status(NAME).doubt() == null);
  }

  @Test
  void nothingIsToldWhereItIsWhatItWas() throws Exception {
    restart(settings(Direction.COUNTS_UP), () -> {});
    touch(6);
    assertNull(rig.stations.status(NAME).doubt());
  }

  /** Another zero is not the one that was remembered. */
  @Test
  void norAfterTheZeroWasSetAnew() throws Exception {
    restart(settings(Direction.COUNTS_UP), () -> hand.offset(0.35));
    hand.standOn(0);
    var unused = rig.stations.at(NAME).takeZero("tester");
    touch(6);
    assertNull(rig.stations.status(NAME).doubt());
  }

  /** What was told ends too: nobody may find a key for it. */
  @Test
  void aZeroEndsWhatWasToldFromMemory() throws Exception {
    restart(settings(Direction.COUNTS_UP), () -> hand.reverse(true));
    touch(3);
    awaitDoubt("counting direction was changed");
    hand.standOn(StationRig.FREE_AIR_MM + 1);
    var unused = rig.stations.at(NAME).takeZero("tester");
    assertNull(rig.stations.status(NAME).doubt());
  }

  @Test
  void norWhereTheStationReadsItInAnotherWay() throws Exception {
    restart(settings(Direction.COUNTS_DOWN), () -> hand.reverse(true));
    touch(6);
    assertNull(rig.stations.status(NAME).doubt());
  }
}
