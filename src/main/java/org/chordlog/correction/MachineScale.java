package org.chordlog.correction;

import org.chordlog.measure.BadInput;
import org.chordlog.measure.Check;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;
import org.jspecify.annotations.Nullable;

/**
 * The scale on which an operator reads or keys in the rollers' setting. {@code unit} is a text for
 * people ("mm", "0.01 mm", "turns"); {@code step} the least difference that can be set, 0 if not
 * known; {@code lostMotion} what a reversal loses, 0 if not known; {@code moveUncertainty} the
 * standard uncertainty of a move as made, null if not known. All three in that unit.
 */
public record MachineScale(
    String name,
    String unit,
    double step,
    Tighter tighter,
    double lostMotion,
    @Nullable Double moveUncertainty,
    GainPrior gain) {
  private static final String NOBODYS_UNIT = "units";

  /** Which way the number on the scale goes when the rollers bend tighter. */
  public enum Tighter {
    HIGHER,
    LOWER,
    UNKNOWN
  }

  public MachineScale {
    Check.text("name", name);
    if (unit.isBlank()) {
      throw new BadInput(
          "unit", "'" + unit + "'", "leaves amounts without a unit", "as mm, 0.01 mm, turns");
    }
    Check.notNegative("step", step);
    Check.notNegative("lostMotion", lostMotion);
    if (moveUncertainty != null) {
      Check.notNegative("moveUncertainty", moveUncertainty);
    }
  }

  /** Nothing known but what can be learned from recorded corrections. */
  public static MachineScale unknown() {
    return new MachineScale(
        "machine's scale", NOBODYS_UNIT, 0, Tighter.UNKNOWN, 0, null, GainPrior.unknown());
  }

  /** "one unit (mm)"; "one unit" where nobody said what it is. */
  public String oneUnit() {
    return unit.equals(NOBODYS_UNIT) ? "one unit" : "one unit (" + unit + ")";
  }

  /** The same scale with another belief of what one unit does. */
  public MachineScale withGain(GainPrior other) {
    return new MachineScale(name, unit, step, tighter, lostMotion, moveUncertainty, other);
  }

  /** Whether numbers on it mean the same as on that one, or nobody had said what they were on. */
  boolean goesOnFrom(MachineScale before) {
    MachineScale nobodys = unknown();
    boolean described = !before.name.equals(nobodys.name) || !before.unit.equals(nobodys.unit);
    return !described || (name.equals(before.name) && unit.equals(before.unit));
  }

  /** To the nearest step of the scale. */
  double rounded(double amount) {
    return step > 0 ? Math.rint(amount / step) * step : amount;
  }

  /** Whether a gain of that sign contradicts what was said about the scale. */
  boolean contradicts(double gain) {
    return (tighter == Tighter.HIGHER && gain < 0) || (tighter == Tighter.LOWER && gain > 0);
  }

  void write(Packer to) {
    to.put(name).put(unit).put(step).put(tighter.name()).put(lostMotion);
    Packing.put(to, moveUncertainty).put(gain.perMmPerUnit()).put(gain.standardUncertainty());
  }

  static MachineScale read(Unpacker from) {
    return new MachineScale(
        from.text(),
        from.text(),
        from.aDouble(),
        Tighter.valueOf(from.text()),
        from.aDouble(),
        Packing.nullable(from),
        new GainPrior(from.aDouble(), from.aDouble()));
  }
}
