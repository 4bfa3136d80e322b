package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;

/** Invented pieces of 6 m with a ripple of 565 mm, straight at both ends. */
final class LineSnapshots {
  private LineSnapshots() {}

  static LineSnapshot threePieces() {
    return new LineSnapshot(
        "mm",
        new LineSnapshot.Profiles(List.of(trace(12), trace(11), trace(10)), 1800, 1788.0, 1812.0),
        spectrum(),
        List.of(
            new LineSnapshot.Ripple("entry roller", List.of(1.0, 1.4, 2.9, 3.5), 2.33, 0.31),
            new LineSnapshot.Ripple("inner roller", List.of(1.0, 0.9, 1.2, 0.8), 2.33, 0.02)));
  }

  static LineSnapshot.Trace trace(int piece) {
    List<LineSnapshot.Spot> spots = new ArrayList<>();
    List<LineSnapshot.Place> places = new ArrayList<>();
    for (int along = 0; along <= 6000; along += 50) {
      boolean bent = along >= 450 && along <= 5550;
      double radius = 1800 + piece + 4 * Math.sin(2 * Math.PI * along / 565 + piece);
      spots.add(new LineSnapshot.Spot(along, bent ? radius : Double.POSITIVE_INFINITY));
      if (bent) {
        places.add(new LineSnapshot.Place(along, radius, radius - 2, radius + 2));
      }
    }
    return new LineSnapshot.Trace("piece " + piece, spots, places);
  }

  private static LineSnapshot.Spectrum spectrum() {
    List<LineSnapshot.Wave> waves = new ArrayList<>();
    for (int wavelength = 110; wavelength < 2000; wavelength += 20) {
      double off = (wavelength - 565) / 40.0;
      waves.add(new LineSnapshot.Wave(wavelength, 0.02 + 0.2 * Math.exp(-off * off)));
    }
    return new LineSnapshot.Spectrum(
        12,
        waves,
        List.of(
            new LineSnapshot.RollerBand("entry roller", 554, 577),
            new LineSnapshot.RollerBand("inner roller", 478, 497)));
  }
}
