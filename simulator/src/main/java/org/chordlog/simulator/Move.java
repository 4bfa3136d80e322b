package org.chordlog.simulator;

import java.util.function.DoubleUnaryOperator;

/** A part of the plunger's way: how far it is pushed in, mm, at each second of it. */
record Move(double seconds, DoubleUnaryOperator pushedInMm) {
  private static final double RING_HZ = 25;
  private static final double RING_SECONDS = 0.04;
  private static final double CREEP_SECONDS = 0.1;

  static Move hold(double mm, double seconds) {
    return new Move(seconds, t -> mm);
  }

  /** From one place to the other, gently at both ends. */
  static Move glide(double fromMm, double toMm, double seconds) {
    return new Move(seconds, t -> fromMm + (toMm - fromMm) * smooth(t / seconds));
  }

  /**
   * Rocked from foot to foot about a seat, out by up to {@code mm} and back once a swing; at first
   * the plunger rings.
   */
  static Move rock(double seatMm, double mm, double swingSeconds, double ringMm, double seconds) {
    double swings = Math.max(1, Math.rint(seconds / swingSeconds));
    return new Move(
        seconds,
        t ->
            seatMm
                - mm * (1 - 0.5 * t / seconds) * square(Math.sin(Math.PI * swings * t / seconds))
                + ringMm * Math.exp(-t / RING_SECONDS) * Math.sin(2 * Math.PI * RING_HZ * t));
  }

  /** At rest, but for a last creep into the seat. */
  static Move rest(double seatMm, double creepMm, double seconds) {
    return new Move(seconds, t -> seatMm - creepMm * Math.exp(-t / CREEP_SECONDS));
  }

  private static double smooth(double share) {
    return share * share * (3 - 2 * share);
  }

  private static double square(double value) {
    return value * value;
  }
}
