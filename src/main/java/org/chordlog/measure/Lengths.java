package org.chordlog.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Lengths as said to a person, in millimetres or inches. */
public record Lengths(LengthUnit unit) {
  private static final int MOST_DECIMALS = 6;
  private static final int UNKNOWN = 3;
  private static final int CONVERTED_DECIMALS = 4;
  private static final double SMALL = 0.01;
  private static final MathContext TWO_DIGITS = new MathContext(2, RoundingMode.HALF_EVEN);

  /** 1800.1 less 1800 is a little under 0.1, and has the places of 0.1. */
  private static final double SUBTRACTED = 1 + 1e-9;

  public static final Lengths MM = new Lengths(LengthUnit.MM);
  public static final Lengths INCH = new Lengths(LengthUnit.INCH);

  /**
   * Decimals that an expanded uncertainty supports: those of its two significant digits (JCGM
   * 100:2008, 7.2.6), at most {@value #MOST_DECIMALS}; below 0 for tens and hundreds. Both in the
   * same unit; 3 where the uncertainty is not known. The pages have it in {@code parts/units.js}.
   */
  public static int decimals(double expanded) {
    if (!(expanded > 0) || !Double.isFinite(expanded)) {
      return UNKNOWN;
    }
    double decimals = 1 - Math.floor(Math.log10(expanded * SUBTRACTED));
    return (int) Math.max(-MOST_DECIMALS, Math.min(MOST_DECIMALS, decimals));
  }

  /** Half the interval of a radius, mm, or its lower side where it is open towards flat. */
  public static double expandedMm(RadiusEstimate e) {
    double radius = e.radiusMm() == null ? Double.NaN : e.radiusMm();
    Double upper = e.upperMm();
    return upper == null ? radius - e.lowerMm() : (upper - e.lowerMm()) / 2;
  }

  /** A length with the decimals that its expanded uncertainty supports, and its unit. */
  public String text(double mm, double expandedMm) {
    return number(mm, decimals(in(expandedMm))) + " " + symbol();
  }

  /** A length of a sentence. */
  public String text(Quantity quantity) {
    String number =
        quantity.expandedMm() == 0
            ? stated(quantity.mm())
            : number(quantity.mm(), decimals(in(quantity.expandedMm())));
    return switch (quantity.style()) {
      case WITH_UNIT -> number + " " + symbol();
      case SIGNED -> (quantity.mm() > 0 ? "+" : "") + number + " " + symbol();
      case BARE -> number;
    };
  }

  /**
   * A length as short as it was stated, without unit: to the nanometre in mm; converted it has at
   * most four decimals, or two significant digits where that leaves too little.
   */
  public String stated(double mm) {
    BigDecimal exact = BigDecimal.valueOf(in(mm));
    int places = unit == LengthUnit.MM ? MOST_DECIMALS : CONVERTED_DECIMALS;
    BigDecimal rounded =
        unit != LengthUnit.MM && Math.abs(exact.doubleValue()) < SMALL
            ? exact.round(TWO_DIGITS)
            : exact.setScale(places, RoundingMode.HALF_EVEN);
    return Decimals.plain(rounded);
  }

  /** A length with that many decimals in millimetres, and its unit. */
  public String fixed(double mm, int decimalsInMm) {
    return number(mm, decimalsAs(decimalsInMm)) + " " + symbol();
  }

  /**
   * Decimals of a length that has so many in millimetres: two more in inches, with which it is at
   * least as fine. The one rule for pages ({@code parts/units.js}), reports and commands.
   */
  public int decimalsAs(int decimalsInMm) {
    return unit == LengthUnit.INCH ? decimalsInMm + 2 : decimalsInMm;
  }

  public String symbol() {
    return switch (unit) {
      case MM -> "mm";
      case UM -> "µm";
      case INCH -> "in";
    };
  }

  private String number(double mm, int decimals) {
    return Decimals.fixed(in(mm), decimals);
  }

  private double in(double mm) {
    return mm * LengthUnit.MM.nanometres() / unit.nanometres();
  }
}
