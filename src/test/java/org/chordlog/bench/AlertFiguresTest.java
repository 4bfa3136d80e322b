package org.chordlog.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.bench.AlertFigures.Alarms;
import org.chordlog.bench.AlertFigures.Told;
import org.chordlog.bench.AlertShop.Way;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The short form of the figures of alerts in src/docs/error-rates.md, by the same seeds. */
@Tag("slow")
final class AlertFiguresTest {
  @Test
  void aSteadyShopIsHardlyEverToldOfItsMachines() {
    Alarms alarms = AlertFigures.falseAlarms(Way.jobs(100), 4, 1);
    assertTrue(alarms.mean() < 1, alarms::toString);
  }

  @Test
  void aCreepIsToldInTime() {
    Told told = AlertFigures.told(Way.jobs(0).creeping(2, 20), 40);
    assertEquals(40, told.asPromised().count(), told::toString);
    assertTrue(told.soon().count() >= 36, told::toString);
  }
}
