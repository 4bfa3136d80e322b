package org.chordlog.forward;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The short form of the harness. */
@Tag("slow")
final class PlantHarnessTest {
  @Test
  void afterAFewKillsOfEachEveryRowIsThereOnce() throws Exception {
    System.out.println(PlantHarness.run(2, 4, 2, 20261126));
  }
}
