package org.chordlog.capture;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;

import org.chordlog.capture.CaptureOutcome.Captured;
import org.chordlog.measure.CaptureMode;
import org.chordlog.measure.Indicator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class SettledCaptureTest {
  private static final double STEP = 0.01;
  private static final double FREE = -6;
  private static final CaptureSettings SETTINGS =
      CaptureOptions.of(CaptureMode.SETTLED).settings(new Indicator(STEP, 0.02, 12.5));

  private static Trace trace(double rate) {
    return new Trace(STEP, rate, 7).noise(0.4).jitter(0.2).hold(FREE, rest(rate) * 2);
  }

  private static double rest(double rate) {
    return Math.max(1, 8 / rate);
  }

  /** The captured values in steps; a refusal is no number. */
  private static double[] steps(Trace trace) {
    return trace.through(new SettledCapture(SETTINGS)).stream()
        .mapToDouble(o -> o instanceof Captured c ? c.depth().valueNm() / (STEP * 1e6) : Double.NaN)
        .toArray();
  }

  @ParameterizedTest
  @ValueSource(doubles = {1, 2, 10, 50, 200, 1000})
  void eachContactOnceOnConvexAndConcaveFaces(double rate) {
    Trace trace = trace(rate);
    for (double depth : new double[] {2.73, -3.1, 2.73}) {
      trace.ramp(depth - 0.3, 0.4).swing(depth, 0.3, 0.7, 1.2).hold(depth, rest(rate) * 1.5);
      trace.hold(FREE, rest(rate));
    }
    assertArrayEquals(new double[] {273, -310, 273}, steps(trace), 1);
  }
}
