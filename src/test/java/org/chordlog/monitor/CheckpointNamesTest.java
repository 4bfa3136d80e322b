package org.chordlog.monitor;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/**
 * Names under which checkpoints are stored: another name means that all readings are read again.
 */
final class CheckpointNamesTest {
  @Test
  void ofAdviceByMachine() {
    assertEquals("correction/bender", RunningAdvice.checkpointOwner("bender"));
  }
}
