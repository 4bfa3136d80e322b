package org.chordlog.verdict;

import java.util.Locale;
import org.chordlog.measure.LengthUnit;

/** Lengths as said to a person, in millimetres or inches. */
public record Lengths(LengthUnit unit) {
  private static final int MOST_DECIMALS = 6;
  public static final Lengths MM = new Lengths(LengthUnit.MM);

  /**
   * Decimals that an expanded uncertainty supports: those of its two significant digits (JCGM
   * 100:2008, 7.2.6), at most {@value #MOST_DECIMALS}; both in the same unit.
   */
  public static int decimals(double expanded) {
    if (!(expanded > 0) || !Double.isFinite(expanded)) {
      return unitless();
    }
    return (int) Math.max(0, Math.min(MOST_DECIMALS, 1 - Math.floor(Math.log10(expanded))));
  }

  private static int unitless() {
    return 3;
  }

  /** A length with the decimals that its expanded uncertainty supports, and its unit. */
  public String text(double mm, double expandedMm) {
    return number(mm, decimals(in(expandedMm))) + " " + symbol();
  }

  /** A length with that many decimals in millimetres (two more in inches), and its unit. */
  public String fixed(double mm, int decimalsInMm) {
    return number(mm, unit == LengthUnit.INCH ? decimalsInMm + 2 : decimalsInMm) + " " + symbol();
  }

  public String symbol() {
    return switch (unit) {
      case MM -> "mm";
      case UM -> "µm";
      case INCH -> "in";
    };
  }

  private String number(double mm, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", in(mm));
    return text.startsWith("-") && Double.parseDouble(text) == 0 ? text.substring(1) : text;
  }

  private double in(double mm) {
    return mm * LengthUnit.MM.nanometres() / unit.nanometres();
  }
}
