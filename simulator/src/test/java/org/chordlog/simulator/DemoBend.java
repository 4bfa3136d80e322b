package org.chordlog.simulator;

/** The demo's machine and tube as functions, for studies that need no device. Lengths in mm. */
public final class DemoBend {
  public static final double TARGET_MM = 1800;
  public static final double TOLERANCE_MM = 12;
  public static final double HALF_DISTANCE_MM = 300;

  /** Mean yield strength of the lots, MPa. */
  public static final double YIELD_MPA = 240;

  private static final double DIAMETER_MM = 60.3;
  private static final Rollers ROLLERS = new Rollers(HALF_DISTANCE_MM, 90);
  private static final SpringBack TUBE = new SpringBack(210_000, (DIAMETER_MM - 3.2) / 2);

  private DemoBend() {}

  public static double loadedRadiusMm(double settingMm) {
    return ROLLERS.loadedRadiusMm(settingMm, DIAMETER_MM);
  }

  /** Curvature of the centreline after unloading, 1/mm. */
  public static double unloadedPerMm(double settingMm, double yieldMpa) {
    return TUBE.unloadedPerMm(1 / loadedRadiusMm(settingMm), yieldMpa);
  }

  /** The setting that bends to a radius with the mean yield strength, by bisection. */
  public static double settingMm(double radiusMm) {
    double low = 5;
    double high = 80;
    for (int i = 0; i < 100; i++) {
      double middle = (low + high) / 2;
      boolean open = unloadedPerMm(middle, YIELD_MPA) < 1 / radiusMm;
      low = open ? middle : low;
      high = open ? high : middle;
    }
    return low;
  }
}
