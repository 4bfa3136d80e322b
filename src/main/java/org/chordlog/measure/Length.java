package org.chordlog.measure;

/** Conversions between stored nanometres and millimetres. */
public final class Length {
  public static final double NM_PER_MM = 1e6;

  private Length() {}

  /** Millimetres of nanometres. */
  public static double mm(long nm) {
    return nm / NM_PER_MM;
  }

  /** Nearest whole nanometre. */
  public static long nm(double mm) {
    return Math.round(mm * NM_PER_MM);
  }
}
