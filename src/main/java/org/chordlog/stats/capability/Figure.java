package org.chordlog.stats.capability;

import org.chordlog.measure.Decimals;
import org.chordlog.measure.Lengths;
import org.chordlog.stats.math.Interval;
import org.jspecify.annotations.Nullable;

/**
 * One figure of a summary. {@code value} is null where the data can't give it; {@code method} then
 * says why. The interval, where there is one, holds at {@code confidence}.
 */
public record Figure(
    String name,
    @Nullable Double value,
    @Nullable Double lower,
    @Nullable Double upper,
    @Nullable Double confidence,
    String unit,
    String method,
    String source) {
  /** The same figure computed otherwise; {@code range} null: without an interval. */
  Figure computed(
      @Nullable Double newValue, @Nullable Bounds range, String newMethod, String newSource) {
    return new Figure(
        name,
        newValue,
        range == null ? null : range.lower(),
        range == null ? null : range.upper(),
        range == null ? null : Interval.CONFIDENCE,
        unit,
        newMethod,
        newSource);
  }

  /** Either end is null where it is open. */
  record Bounds(@Nullable Double lower, @Nullable Double upper) {}

  /**
   * A value of it as everything prints it: three decimals for what spreads, in mm, and for
   * probabilities, two for the rest, whole numbers for counts and for many ppm; a true minus.
   */
  public String printed(double of) {
    if (unit.equals("ppm")) {
      return of > 0 && of < 0.1 ? "< 0.1" : Decimals.fixed(of, of < 100 ? 1 : 0);
    }
    if (name.endsWith("PValue") && of < 0.001) {
      return "< 0.001";
    }
    return Decimals.fixed(of, decimals());
  }

  /** Decimals of a printed value. */
  public int decimals() {
    if (name.equals("n")) {
      return 0;
    }
    boolean inches = unit.equals("in");
    boolean spread =
        (inches || unit.equals("mm")) && (name.contains("Deviation") || name.equals("range"));
    int decimals = spread || name.endsWith("PValue") ? 3 : 2;
    return inches ? Lengths.INCH.decimalsAs(decimals) : decimals;
  }

  /** What it is; throws for a name that {@link FigureKind} does not list. */
  public FigureKind kind() {
    return FigureKind.named(name).orElseThrow();
  }
}
