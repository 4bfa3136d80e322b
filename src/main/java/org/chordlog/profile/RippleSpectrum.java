package org.chordlog.profile;

import java.util.ArrayList;
import java.util.List;

/**
 * How strongly the curvature waves along pieces at each wavelength, as the bridge shows it: the
 * amplitude by least squares (percent of the mean curvature), over several pieces the root of the
 * mean square. Wavelengths are the same for all pieces; those longer than half of a piece are left
 * out.
 */
public record RippleSpectrum(List<Wave> waves) {
  private static final double SHORTEST_MM = 110;
  private static final double RATIO = 1.03;
  private static final int STEPS = 100;
  private static final int LEAST_WINDOWS = 8;

  /** An amplitude at a wavelength along the face that the length is measured on. */
  public record Wave(double wavelengthMm, double amplitudePercent) {}

  public RippleSpectrum {
    waves = List.copyOf(waves);
  }

  /** Of an evaluated piece; without waves where it is too short. */
  public static RippleSpectrum of(
      Profile profile, PieceResult result, EvaluationSettings settings) {
    RippleSeries series = RippleSeries.of(profile, result.zone(), settings, List.of());
    List<Wave> waves = new ArrayList<>();
    if (series.windows() < LEAST_WINDOWS) {
      return new RippleSpectrum(waves);
    }
    Harmonic harmonic = series.harmonic();
    double longest = result.zone().lengthMm() / 2;
    double wavelength = SHORTEST_MM;
    for (int i = 0; i < STEPS && wavelength <= longest; i++) {
      waves.add(new Wave(wavelength, 100 * harmonic.at(1 / wavelength).amplitude()));
      wavelength *= RATIO;
    }
    return new RippleSpectrum(waves);
  }

  /** Over pieces, those without waves left out; as far as the shortest of them goes. */
  public static RippleSpectrum mean(List<RippleSpectrum> all) {
    List<RippleSpectrum> pieces = all.stream().filter(each -> !each.waves().isEmpty()).toList();
    int common = pieces.stream().mapToInt(piece -> piece.waves().size()).min().orElse(0);
    List<Wave> waves = new ArrayList<>();
    for (int i = 0; i < common; i++) {
      double squares = 0;
      for (RippleSpectrum piece : pieces) {
        double amplitude = piece.waves().get(i).amplitudePercent();
        squares += amplitude * amplitude;
      }
      double wavelength = pieces.get(0).waves().get(i).wavelengthMm();
      waves.add(new Wave(wavelength, Math.sqrt(squares / pieces.size())));
    }
    return new RippleSpectrum(waves);
  }
}
