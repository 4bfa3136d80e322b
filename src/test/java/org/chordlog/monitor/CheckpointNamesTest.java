package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.chordlog.measure.Recorded;
import org.chordlog.measure.RollerScale;
import org.junit.jupiter.api.Test;

/** Names under which checkpoints are kept: another name means that all readings are read again. */
final class CheckpointNamesTest {
  @Test
  void ofAdviceByMachineAndTheRecordOfItsScale() {
    RollerScale.Motion motion =
        new RollerScale.Motion(RollerScale.Tighter.HIGHER, 0.01, null, null);
    RollerScale scale =
        new RollerScale(7, "bender", "top roller", "mm", motion, null, new Recorded(1, "me"));
    assertEquals("correction/bender/no-scale", RunningAdvice.checkpointOwner("bender", null));
    assertEquals("correction/bender/scale-7", RunningAdvice.checkpointOwner("bender", scale));
  }
}
