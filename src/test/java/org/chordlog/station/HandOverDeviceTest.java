package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.HexFormat;
import java.util.Set;
import org.chordlog.Await;
import org.chordlog.WaitingTest;
import org.chordlog.capture.CaptureOptions;
import org.chordlog.capture.CaptureOptionsBuilder;
import org.chordlog.measure.BadInput;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Reading;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.store.RequestKey;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;

/** What a hand does over a real device: a zero, a short rest, a reading asked for. */
@Tag("slow")
final class HandOverDeviceTest {
  private static final ZeroRule MARKED =
      new ZeroRule(8, ZeroRule.Policy.MARK, ZeroRule.Policy.MARK);

  /** Of a rest so short, which a busy machine may cut shorter still. */
  private static final int MOST_TRIES = 10;

  @TempDir private Path directory;

  /** What the bridge stands on from the start may be nothing at all. */
  @WaitingTest
  void zeroIsRefusedUntilThePlungerWasSeenToBePushedIn() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("hand")) {
      rig.open("hand", CaptureOptions.of(CaptureMode.SETTLED), MARKED);
      try (Hand hand = new Hand(rig, "hand", device)) {
        hand.hold(StationRig.FREE_AIR_MM, 150);
        assertThrows(BadInput.class, () -> rig.stations.at("hand").takeZero("tester"));
        hand.hold(0.1, 250);
        assertEquals(100_000, rig.stations.at("hand").takeZero("tester").valueNm());
      }
    }
  }

  /** An indicator that counts down, at a station whose settings say nothing of that. */
  @WaitingTest
  void zeroOnTheFlatIsRefusedWithAHintWhereTheIndicatorCountsTheOtherWay() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("hand")) {
      rig.open("hand", CaptureOptions.of(CaptureMode.SETTLED), MARKED);
      try (Hand hand = new Hand(rig, "hand", device)) {
        hand.hold(-StationRig.FREE_AIR_MM, 150);
        hand.hold(-0.1, 250);
        BadInput refused =
            assertThrows(BadInput.class, () -> rig.stations.at("hand").takeZero("tester"));
        String allowed = refused.faults().get(0).allowed().toString();
        assertTrue(allowed.contains("counts up or down"), refused.getMessage());
      }
    }
  }

  /** Lifted between one and one and a half times the rest that is asked for, here 0.6 of 0.5 s. */
  @WaitingTest
  void aShortRestIsTakenAtTheLiftWithTheFrameThatCompletedIt() throws Exception {
    CaptureOptions halfASecond =
        new CaptureOptionsBuilder(CaptureMode.SETTLED).restSeconds(0.5).build();
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("hand")) {
      rig.open("hand", halfASecond, MARKED);
      rig.startJob("hand");
      try (Hand hand = new Hand(rig, "hand", device)) {
        for (int tries = 0; rig.taken().isEmpty(); tries++) {
          assertTrue(tries < MOST_TRIES, () -> rig.stations.status("hand").toString());
          hand.hold(StationRig.FREE_AIR_MM, 250);
          hand.hold(5, 115);
          hand.hold(StationRig.FREE_AIR_MM, 100);
        }
      }
      Reading reading = rig.taken().get(0);
      assertEquals(5_000_000, reading.captured().valueNm());
      assertEquals(HexFormat.of().formatHex(StationRig.line(5)), reading.rawHex() + "0d0a");
    }
  }

  @WaitingTest
  void aTriggerTakesAReadingNow() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn("hand")) {
      rig.open("hand", CaptureOptions.of(CaptureMode.TRIGGER), MARKED);
      rig.startJob("hand");
      try (Hand hand = new Hand(rig, "hand", device)) {
        hand.hold(StationRig.FREE_AIR_MM, 150);
        hand.hold(5, 150);
        RequestKey key = new RequestKey("a-key-of-this-test", "a request");
        assertInstanceOf(
            TriggerAnswer.Taken.class,
            RequestKey.during(key, () -> rig.stations.at("hand").trigger()));
        // committed with the reading, which the station's own thread writes
        assertTrue(rig.store.answeredRequests().find(key.key()).isPresent());
        Await.until(() -> rig.taken().size() == 1);
      }
      assertEquals(1, rig.taken().size());
      Reading reading = rig.taken().get(0);
      assertEquals(CaptureMode.TRIGGER, reading.captured().mode());
      assertEquals(Set.of(Mark.ZERO_MISSING, Mark.CALIBRATION_MISSING), reading.marks());
    }
  }
}
