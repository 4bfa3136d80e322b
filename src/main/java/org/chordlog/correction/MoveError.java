package org.chordlog.correction;

/** How far a move of the rollers may miss what the scale says. */
record MoveError(MachineScale scale, double halfTolerance) {
  /** A quarter of the deadband, 0.183 half tolerances at the usual stakes. */
  private static final double LEAST = 0.25 * 0.183;

  /** Most that a move is believed to miss while the gain is unknown, in half tolerances. */
  private static final double MOST_UNKNOWN = 1 / 7.0;

  private static final double UNIFORM = Math.sqrt(12);

  /** Variance of the level from the error of a move; the gain's own uncertainty included. */
  double variance(Belief belief) {
    double square = belief.gain() * belief.gain() + belief.gainVariance();
    if (!belief.blind()) {
      return square * squared(ofAmount(belief));
    }
    Double stated = scale.moveUncertainty();
    double known = squared(stated == null ? scale.step() / UNIFORM : stated);
    double least = stated == null ? squared(LEAST * halfTolerance) : 0;
    return Math.max(least, Math.min(square * known, squared(MOST_UNKNOWN * halfTolerance)));
  }

  /** The same with the gain as it is believed to be. */
  double costOfMove(Belief belief) {
    return squared(belief.gain() * ofAmount(belief));
  }

  /** Standard uncertainty of a move in the scale's unit; the gain must not be 0. */
  private double ofAmount(Belief belief) {
    Double stated = scale.moveUncertainty();
    return stated == null
        ? Math.max(scale.step() / UNIFORM, LEAST * halfTolerance / Math.abs(belief.gain()))
        : stated;
  }

  private static double squared(double value) {
    return value * value;
  }
}
