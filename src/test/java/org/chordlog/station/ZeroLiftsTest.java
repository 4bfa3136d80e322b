package org.chordlog.station;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.nio.file.Path;
import org.chordlog.link.SerialSettings;
import org.chordlog.measure.Bridge;
import org.chordlog.measure.Mounted;
import org.chordlog.measure.Recorded;
import org.chordlog.measure.Zero;
import org.chordlog.radius.ZeroEvaluation;
import org.chordlog.store.Some;
import org.chordlog.store.Store;
import org.chordlog.store.open.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is remembered of a station's zeros. */
final class ZeroLiftsTest {
  private static final int KEPT = 100;

  @TempDir Path directory;

  /** Each second one stands a millimetre off the flat. */
  @Test
  void theNewestHundredAreRemembered() {
    try (Store store = Stores.open(directory)) {
      Bridge bridge = store.gauges().add(Some.bridge("b"), "me");
      StationSettings settings =
          StationRig.settings(
              "A", SerialSettings.of("/dev/none"), StationRig.settled(), ZeroRule.DEFAULT);
      ZeroLifts lifts = new ZeroLifts(store.checkpoints(), "A");
      for (int i = 1; i <= 2 * KEPT; i++) {
        long value = i % 2 == 0 ? 1_000_000 : 0;
        Zero zero = new Zero(i, "A", bridge.id(), value, 0, 9, new Recorded(i, "me"));
        AtRest rest = new AtRest(new ZeroEvaluation(value, 0, 9), null, -5_000_000L, true);
        assertNotNull(lifts.add(zero, rest, -5_000_000, new Mounted(bridge, null), settings));
      }
      assertEquals(KEPT / 2, lifts.doubts().size());
      assertNull(lifts.doubt(KEPT));
      assertNotNull(lifts.doubt(2 * KEPT));
    }
  }
}
