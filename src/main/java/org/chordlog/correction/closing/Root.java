package org.chordlog.correction.closing;

import java.util.function.DoubleUnaryOperator;

/** A root by bisection, to the last bit. */
final class Root {
  private Root() {}

  /** The function must have one change of sign between the ends, or be 0 at one. */
  static double between(double low, double high, DoubleUnaryOperator function) {
    double atHigh = function.applyAsDouble(high);
    if (atHigh == 0) {
      return high;
    }
    double from = low;
    double to = high;
    boolean rises = atHigh > 0;
    for (int i = 0; i < 200; i++) {
      double middle = (from + to) / 2;
      boolean above = function.applyAsDouble(middle) > 0;
      from = above == rises ? from : middle;
      to = above == rises ? middle : to;
    }
    return (from + to) / 2;
  }
}
