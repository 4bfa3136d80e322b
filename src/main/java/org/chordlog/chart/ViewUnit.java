package org.chordlog.chart;

import org.chordlog.measure.Lengths;
import org.jspecify.annotations.Nullable;

/** The unit in which lengths are shown to a viewer; one inch is exactly 25.4 mm. */
public enum ViewUnit {
  MM("mm", 1),
  INCH("in", 25.4);

  private static final String KEPT = "mm";
  private final String symbol;
  private final double mm;

  ViewUnit(String symbol, double mm) {
    this.symbol = symbol;
    this.mm = mm;
  }

  /** A source whose lengths are in this unit: axes, limits, labels and points follow. */
  public ChartSource of(ChartSource source) {
    return this == MM ? source : new ConvertedCharts(source, this);
  }

  /** Whether quantities of that unit are shown in another one. */
  boolean converts(String unit) {
    return this != MM && unit.equals(KEPT);
  }

  /** How lengths are said in it. */
  public Lengths lengths() {
    return this == MM ? Lengths.MM : Lengths.INCH;
  }

  public String symbol() {
    return symbol;
  }

  /** The length in this unit. */
  public double of(double lengthMm) {
    return lengthMm / mm;
  }

  /** The same of one that may be missing. */
  public @Nullable Double orNull(@Nullable Double lengthMm) {
    return lengthMm == null ? null : (Double) of(lengthMm);
  }
}
