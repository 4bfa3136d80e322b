package org.chordlog.station;

import java.nio.file.Path;
import org.chordlog.measure.Bridge;
import org.chordlog.simulator.PseudoTerminal;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** Tests of one station whose bridge a hand sets down and lifts. */
abstract class HandTest {
  static final String NAME = "rolls-1";

  @TempDir private Path directory;
  private PseudoTerminal device;
  StationRig rig;
  Hand hand;

  @BeforeEach
  void plugIn() throws Exception {
    rig = new StationRig(directory);
    device = rig.plugIn(NAME);
    hand = new Hand(rig, NAME, device);
  }

  @AfterEach
  void close() throws Exception {
    hand.close();
    rig.close();
    device.close();
  }

  StationActions begin(ZeroRule rule) throws Exception {
    rig.open(NAME, StationRig.settled(), rule);
    return rig.stations.at(NAME);
  }

  /** Another bridge than the one that is mounted; its number. */
  long wideBridge() {
    Bridge wide = new Bridge(0, "wide", new Bridge.Span(250, 0.01), new Bridge.Feet(0, 0), 0);
    return rig.store.gauges().add(wide, "tester").id();
  }
}
