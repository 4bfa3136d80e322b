package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.Job;
import org.chordlog.measure.JobEvent;
import org.chordlog.measure.Mark;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A zero that was set on a bent piece: free air proves it wrong. */
final class FlatInDoubtTest extends HandTest {

  private static final double DEPTH_MM = 2.9;

  /** 6 m, 200 mm between feet of no radius. */
  private static final double BENT_MM = 0.8333;

  private static final String HIGHER =
      "The flat is 0.833 mm higher over free air than at the last zero: is this really the flat?";

  @BeforeEach
  void begin() throws Exception {
    var unused = begin(ZeroRule.DEFAULT);
  }

  private @Nullable String doubtOfZeroAt(double mm) throws Exception {
    hand.standOn(mm);
    return doubtOfZeroHere();
  }

  private @Nullable String doubtOfZeroHere() {
    StationActions station = rig.stations.at(NAME);
    long taken = station.takeZero("tester").id();
    var doubt = station.zeroDoubts().get(taken);
    return doubt == null ? null : doubt.toString();
  }

  @Test
  void aBentPieceIsAskedAboutAndTheFlatIsNot() throws Exception {
    Job job = rig.startJob(NAME);
    assertNull(doubtOfZeroAt(0));
    assertEquals(HIGHER, doubtOfZeroAt(BENT_MM));
    assertNull(doubtOfZeroAt(0.004));
    List<JobEvent> events = rig.store.jobs().eventsOfJob(job.id());
    assertTrue(events.stream().anyMatch(each -> each.note().equals(HIGHER)));
  }

  @Test
  void setAgainAfterALiftItIsTheFlat() throws Exception {
    assertNull(doubtOfZeroAt(0));
    assertEquals(HIGHER, doubtOfZeroAt(BENT_MM));
    assertEquals(HIGHER, doubtOfZeroHere());
    assertNull(doubtOfZeroAt(BENT_MM));
  }

  /** Until the zero is set again each reading says so, and no master is read with it. */
  @Test
  void whatIsMeasuredMeanwhileSaysThatTheZeroIsInDoubt() throws Exception {
    var unused = rig.startJob(NAME);
    assertNull(doubtOfZeroAt(0));
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.taken().size() == 1);
    assertEquals(Set.of(Mark.CALIBRATION_MISSING), rig.taken().get(0).marks());
    assertEquals(HIGHER, doubtOfZeroAt(BENT_MM));
    hand.touch(DEPTH_MM);
    Await.until(() -> rig.taken().size() == 2);
    assertTrue(rig.taken().get(1).marks().contains(Mark.ZERO_DOUBTFUL));
    MasterActions masters = rig.stations.mastersAt(NAME);
    String refusal = assertThrows(BadInput.class, masters::fit).getMessage();
    assertTrue(String.valueOf(refusal).contains("set zero again, on the flat"), () -> "" + refusal);
  }

  /** The indicator's own zero key moves free air by as much. */
  @Test
  void theIndicatorsOwnZeroIsNoOtherFlat() throws Exception {
    assertNull(doubtOfZeroAt(0));
    hand.hold(StationRig.FREE_AIR_MM, 60);
    hand.offset(-0.4);
    hand.hold(StationRig.FREE_AIR_MM, 280);
    assertNull(doubtOfZeroAt(0));
  }

  @Test
  void anotherMountingIsAnotherFlat() throws Exception {
    assertNull(doubtOfZeroAt(0));
    StationActions station = rig.stations.at(NAME);
    long first = rig.store.gauges().mountedOn(NAME).orElseThrow().id();
    station.changeBridge(wideBridge(), "tester");
    assertNull(doubtOfZeroAt(0.3));
    station.changeBridge(first, "tester");
    assertNull(doubtOfZeroAt(0.6));
    assertEquals(
        "The flat is 0.200 mm lower over free air than at the last zero: is this really the flat?",
        doubtOfZeroAt(0.4));
  }
}
