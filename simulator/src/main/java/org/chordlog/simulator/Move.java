package org.chordlog.simulator;

import java.util.function.DoubleUnaryOperator;

/** A part of the plunger's way: how far it is pushed in, mm, at each second of it. */
record Move(double seconds, DoubleUnaryOperator pushedInMm) {
  static Move hold(double mm, double seconds) {
    return new Move(seconds, t -> mm);
  }

  /** From one place to the other, gently at both ends. */
  static Move glide(double fromMm, double toMm, double seconds) {
    return new Move(seconds, t -> fromMm + (toMm - fromMm) * smooth(t / seconds));
  }

  /** Rocked from foot to foot about a seat: out by up to {@code mm} and back, dying away. */
  static Move rock(double seatMm, double mm, double seconds) {
    double swings = Math.max(1, Math.rint(2 * seconds));
    return new Move(
        seconds,
        t -> seatMm - mm * (1 - t / seconds) * square(Math.sin(Math.PI * swings * t / seconds)));
  }

  private static double smooth(double share) {
    return share * share * (3 - 2 * share);
  }

  private static double square(double value) {
    return value * value;
  }
}
