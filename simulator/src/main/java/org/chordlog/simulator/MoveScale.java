package org.chordlog.simulator;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;

/**
 * The scale on a virtual machine by which its middle roller is moved: one unit moves it by {@code
 * unitMm} (negative where a higher number opens the bend), a change of direction loses {@code
 * lostMotionMm}, and each move is off by chance with that standard deviation.
 */
public record MoveScale(double unitMm, double lostMotionMm, double moveSdMm) {
  /** A dial in mm without any fault. */
  public static final MoveScale EXACT = new MoveScale(1, 0, 0);

  public MoveScale {
    if (Check.finite("unitMm", unitMm) == 0) {
      throw new BadInput("unitMm", unitMm, "moves nothing", "any number but 0");
    }
    Check.notNegative("lostMotionMm", lostMotionMm);
    Check.notNegative("moveSdMm", moveSdMm);
  }

  /** What the roller moves by, mm; {@code chance} is a standard normal draw. */
  double movedMm(double amount, boolean reversed, double chance) {
    double wanted = amount * unitMm;
    double lost = reversed ? Math.min(lostMotionMm, Math.abs(wanted)) : 0;
    return wanted - Math.signum(wanted) * lost + moveSdMm * chance;
  }
}
