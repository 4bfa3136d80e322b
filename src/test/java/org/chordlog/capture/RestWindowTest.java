package org.chordlog.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.chordlog.measure.Sample;
import org.junit.jupiter.api.Test;

/**
 * A value every 5 ms that is every other time 17 µm more: 12.02 µm from neighbour to neighbour, of
 * which the mean of 37 and not of 36 values is within the indicator's 2 µm. A rest of 75 ms has 16.
 */
final class RestWindowTest {
  private static final CaptureSettings SETTINGS =
      new CaptureOptionsBuilder(CaptureMode.SETTLED)
          .restSeconds(0.05)
          .leastSamples(5)
          .build()
          .settings(new Indicator(0.001, 0.002, 12.7));

  private final RestWindow window = new RestWindow(SETTINGS, RestTolerance.VIBRATION);
  private long sequence;
  private long millis;

  private void send(int values, int everyMillis) {
    for (int i = 0; i < values; i++) {
      millis += everyMillis;
      sequence++;
      long valueNm = 5_000_000 + 17_000 * (sequence % 2);
      window.add(new Sample(sequence, millis * 1_000_000, millis * 1_000, valueNm, 0, false));
    }
  }

  @Test
  void aLongerShakeIsNoRest() {
    send(280, 5);
    assertEquals(16, window.count());
    assertFalse(window.atRest());
  }

  @Test
  void moreValuesInTheSameTimeAre() {
    send(15, 5);
    send(20, 0);
    send(1, 5);
    assertEquals(36, window.count());
    assertFalse(window.atRest());
    send(1, 0);
    assertTrue(window.atRest());
  }

  @Test
  void aToleranceThatPermitsMoreMakesItOne() {
    window.meanMayErrBy(5_000);
    send(16, 5);
    assertTrue(window.atRest());
  }
}
