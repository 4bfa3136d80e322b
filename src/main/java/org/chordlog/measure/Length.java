package org.chordlog.measure;

/** Conversions between stored nanometres and millimetres. */
public final class Length {
  public static final double NM_PER_MM = 1e6;

  /** A million km: whole nanometres of it fit a long. */
  private static final double MOST_MM = 1e12;

  private Length() {}

  /** Millimetres of nanometres. */
  public static double mm(long nm) {
    return nm / NM_PER_MM;
  }

  /** Nearest whole nanometre. */
  public static long nm(double mm) {
    return Math.round(mm * NM_PER_MM);
  }

  /** The length; {@link BadInput} with {@code given} where it is far beyond anything measured. */
  public static double possible(String field, Object given, double mm) {
    if (Math.abs(mm) > MOST_MM) {
      throw new BadInput(field, given, "is too large", "a length below a million km");
    }
    return mm;
  }
}
