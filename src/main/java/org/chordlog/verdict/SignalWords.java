package org.chordlog.verdict;

import org.chordlog.stats.control.RunTest;
import org.chordlog.stats.control.Signal;

/** A run test that fired, told by what the points did. */
public final class SignalWords {
  private SignalWords() {}

  /**
   * For example "9 in a row above the centre". A signal names all points that were looked at: one
   * may be no part of it, but for the first points of a phase.
   */
  public static String of(Signal signal) {
    RunTest test = RunTest.numbered(signal.test());
    int seen = signal.points().size();
    int points = seen > test.usualCount() ? seen - test.window(0) : seen;
    return of(test, points, seen, signal.side());
  }

  /** The rule itself, with the usual count of points. */
  public static String rule(RunTest test) {
    return of(test, test.usualCount(), test.window(test.usualCount()), Signal.Side.BOTH);
  }

  private static String of(RunTest test, int points, int seen, Signal.Side side) {
    return switch (test) {
      case BEYOND_LIMIT -> "beyond a control limit" + beside(side);
      case SAME_SIDE -> points + " in a row " + onSide(side);
      case TREND -> points + " in a row " + rising(side);
      case ALTERNATING -> points + " in a row alternating up and down";
      case NEAR_LIMIT -> points + " of " + seen + " beyond 2 sigma" + beside(side);
      case OFF_CENTRE -> points + " of " + seen + " beyond 1 sigma" + beside(side);
      case HUGGING -> points + " in a row within 1 sigma";
      case AVOIDING -> points + " in a row beyond 1 sigma on both sides";
    };
  }

  private static String beside(Signal.Side side) {
    return switch (side) {
      case ABOVE -> ", above";
      case BELOW -> ", below";
      case BOTH -> "";
    };
  }

  private static String onSide(Signal.Side side) {
    return switch (side) {
      case ABOVE -> "above the centre";
      case BELOW -> "below the centre";
      case BOTH -> "on one side of the centre";
    };
  }

  private static String rising(Signal.Side side) {
    return switch (side) {
      case ABOVE -> "rising";
      case BELOW -> "falling";
      case BOTH -> "rising or falling";
    };
  }
}
