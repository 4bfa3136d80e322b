package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.chordlog.Await;
import org.chordlog.capture.CaptureOutcome.Reason;
import org.chordlog.measure.Mark;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.chordlog.simulator.PseudoTerminal;
import org.chordlog.station.ZeroRule.Policy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a zero older than the shift does to readings. */
final class StaleZeroTest {
  private static final String NAME = "shift";
  private static final double DEPTH_MM = 5.0126;
  private static final long NINE_HOURS_MICROS = TimeUnit.HOURS.toMicros(9);

  @TempDir private Path directory;

  @Test
  void readingsAreMarked() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn(NAME)) {
      begin(rig, new ZeroRule(8, Policy.MARK, Policy.REFUSE));
      try (Hand hand = new Hand(rig, NAME, device)) {
        hand.touch(DEPTH_MM);
        Await.until(() -> rig.taken().size() == 1);
      }
      assertTrue(rig.taken().get(0).marks().contains(Mark.ZERO_STALE));
      assertTrue(rig.stations.status(NAME).zeroStale());
    }
  }

  @Test
  void readingsAreRefusedWhereTheStationSaysSo() throws Exception {
    try (StationRig rig = new StationRig(directory);
        PseudoTerminal device = rig.plugIn(NAME)) {
      begin(rig, new ZeroRule(8, Policy.REFUSE, Policy.REFUSE));
      try (Hand hand = new Hand(rig, NAME, device)) {
        hand.touch(DEPTH_MM);
        Await.until(() -> refusals(rig) == 1);
      }
      assertEquals(0, rig.taken().size());
    }
  }

  private static long refusals(StationRig rig) {
    return rig.stations.status(NAME).counts().rejections().getOrDefault(Reason.STALE_ZERO, 0L);
  }

  private static void begin(StationRig rig, ZeroRule rule) throws Exception {
    rig.open(NAME, StationRig.settled(), rule);
    rig.startJob(NAME);
    long bridge = rig.store.gauges().mountedOn(NAME).orElseThrow().id();
    long taken = StationClock.system().wallMicros() - NINE_HOURS_MICROS;
    rig.store
        .gauges()
        .add(new Zero(0, NAME, bridge, 0, 500, 20, new Recorded(taken, "night shift")));
    rig.stations.at(NAME).refresh();
  }
}
