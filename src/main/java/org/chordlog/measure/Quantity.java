package org.chordlog.measure;

/**
 * A length within a {@link Sentence}, mm, with what decides its digits: its expanded uncertainty, 0
 * for a length that is said as it was stated.
 */
public record Quantity(double mm, double expandedMm, Style style) {
  /** How it is written. */
  public enum Style {
    WITH_UNIT,
    /** With its unit, and with its plus as well. */
    SIGNED,
    /** For one beside another that has its unit. */
    BARE
  }

  /** With the digits that an expanded uncertainty of that many mm supports. */
  public static Quantity of(double mm, double expandedMm) {
    return new Quantity(mm, expandedMm, Style.WITH_UNIT);
  }

  /** A length that somebody stated: said without digits that were not given. */
  public static Quantity stated(double mm) {
    return of(mm, 0);
  }

  /** An uncertainty, a spread, a limit of error: two significant digits. */
  public static Quantity uncertainty(double mm) {
    return of(mm, Math.abs(mm));
  }

  /** As fine as {@code decimals} places of a millimetre. */
  public static Quantity fixed(double mm, int decimals) {
    return of(mm, Math.pow(10, 1 - decimals));
  }

  public Quantity withSign() {
    return new Quantity(mm, expandedMm, Style.SIGNED);
  }

  public Quantity withoutUnit() {
    return new Quantity(mm, expandedMm, Style.BARE);
  }
}
