package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.chordlog.Await;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Mark;
import org.chordlog.station.ZeroRule.Policy;
import org.junit.jupiter.api.Test;

/** A zero that was set with one bridge, and readings with another. */
final class ZeroOfOtherBridgeTest extends HandTest {
  private static final double DEPTH_MM = 5.0126;

  private long first;
  private long second;

  private StationActions working(ZeroRule rule) throws Exception {
    StationActions station = begin(rule);
    rig.startJob(NAME);
    first = rig.store.gauges().mountedOn(NAME).orElseThrow().id();
    second = wideBridge();
    return station;
  }

  private void zero(StationActions station) throws Exception {
    hand.standOn(0);
    station.takeZero("tester");
  }

  private long refusals() {
    return rig.stations
        .status(NAME)
        .counts()
        .rejections()
        .getOrDefault(Reason.ZERO_OF_OTHER_BRIDGE, 0L);
  }

  @Test
  void nothingIsMeasuredUntilTheZeroIsSetAnewWhicheverBridgeIsOn() throws Exception {
    StationActions station = working(ZeroRule.DEFAULT);
    zero(station);
    station.changeBridge(second, "tester");
    hand.touch(DEPTH_MM);
    Await.until(() -> refusals() == 1);
    assertTrue(rig.stations.status(NAME).zeroStale());
    station.changeBridge(first, "tester");
    hand.touch(DEPTH_MM);
    Await.until(() -> refusals() == 2);
    assertEquals(0, rig.taken().size());
    zero(station);
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.taken().size() == 1);
    assertEquals(Set.of(Mark.CALIBRATION_MISSING), rig.taken().get(0).marks());
  }

  @Test
  void theBridgeThatIsOnChosenAgainIsNoChange() throws Exception {
    StationActions station = working(ZeroRule.DEFAULT);
    zero(station);
    station.changeBridge(first, "tester");
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.taken().size() == 1);
  }

  @Test
  void whereSuchReadingsAreMarkedTheMarkSaysWhy() throws Exception {
    StationActions station = working(new ZeroRule(8, Policy.MARK, Policy.MARK));
    zero(station);
    station.changeBridge(second, "tester");
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.taken().size() == 1);
    Set<Mark> marks = rig.taken().get(0).marks();
    assertTrue(marks.contains(Mark.ZERO_OF_OTHER_BRIDGE));
    assertFalse(marks.contains(Mark.ZERO_STALE));
  }

  @Test
  void mastersAreNotReadWithIt() throws Exception {
    StationActions station = working(ZeroRule.DEFAULT);
    zero(station);
    station.changeBridge(second, "tester");
    station.changeBridge(first, "tester");
    MasterActions masters = rig.stations.mastersAt(NAME);
    String refusal = assertThrows(BadInput.class, masters::fit).getMessage();
    assertTrue(String.valueOf(refusal).contains("fresh on this bridge"), () -> "" + refusal);
  }
}
