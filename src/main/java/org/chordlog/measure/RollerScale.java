package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * A scale on a machine by which its rollers are set: a dial, a counter, an axis of its control.
 * What is null is not known. Append-only: the newest of a machine and name is in force.
 */
public record RollerScale(
    long id,
    String machine,
    String name,
    String unit,
    Motion motion,
    @Nullable Gain gain,
    Recorded recorded) {
  /** Which way the number on the scale goes when the bend becomes tighter. */
  public enum Tighter {
    HIGHER,
    LOWER,
    UNKNOWN
  }

  /**
   * Moves on the scale, in its own unit: the least that can be set, what a change of direction
   * loses, and the standard uncertainty of a move as made.
   */
  public record Motion(
      Tighter tighter,
      @Nullable Double step,
      @Nullable Double lostMotion,
      @Nullable Double moveUncertainty) {
    public Motion {
      if (step != null) {
        Check.positive("step", step);
      }
      if (lostMotion != null) {
        Check.notNegative("lostMotion", lostMotion);
      }
      if (moveUncertainty != null) {
        Check.notNegative("moveUncertainty", moveUncertainty);
      }
    }
  }

  /**
   * What people say one unit of the scale does: change of curvature, 1/mm, negative where a higher
   * number opens the radius, with its standard uncertainty.
   */
  public record Gain(double perMmPerUnit, double standardUncertainty) {
    public Gain {
      Check.finite("perMmPerUnit", perMmPerUnit);
      Check.positive("standardUncertainty", standardUncertainty);
    }
  }

  public RollerScale {
    Check.text("machine", machine);
    Check.text("name", name);
    Check.text("unit", unit);
  }

  public long atMicros() {
    return recorded.atMicros();
  }

  public String by() {
    return recorded.by();
  }
}
