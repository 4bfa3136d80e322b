package org.chordlog.measure;

import org.jspecify.annotations.Nullable;

/**
 * A scale on a machine by which its rollers are set: a dial, a counter, an axis of its control.
 * {@code step} is the smallest move that can be set, {@code lostMotion} the play after a change of
 * direction, both in the scale's own unit; null where it is not known. Append-only: the newest of a
 * machine and name is in force.
 */
public record MachineScale(
    long id,
    String machine,
    String name,
    String unit,
    double step,
    Tighter tighter,
    @Nullable Double lostMotion,
    long atMicros,
    String by) {
  /** Which way along the scale the bend becomes tighter. */
  public enum Tighter {
    UPWARDS,
    DOWNWARDS,
    UNKNOWN
  }

  public MachineScale {
    Check.text("machine", machine);
    Check.text("name", name);
    Check.text("unit", unit);
    Check.positive("step", step);
    if (lostMotion != null) {
      Check.notNegative("lostMotion", lostMotion);
    }
  }
}
