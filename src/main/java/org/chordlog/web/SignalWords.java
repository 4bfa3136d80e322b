package org.chordlog.web;

import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.Signal;

/** A run test that fired, in words. */
final class SignalWords {
  private SignalWords() {}

  static String of(Signal signal) {
    RunTest test = RunTest.numbered(signal.test());
    return "Test %d: %s%s"
        .formatted(signal.test(), test.describe(test.usualCount()), side(test, signal.side()));
  }

  private static String side(RunTest test, Signal.Side side) {
    return switch (side) {
      case ABOVE -> test == RunTest.TREND ? " (rising)" : " (above)";
      case BELOW -> test == RunTest.TREND ? " (falling)" : " (below)";
      case BOTH -> "";
    };
  }
}
