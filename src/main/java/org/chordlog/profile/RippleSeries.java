package org.chordlog.profile;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.chordlog.measure.LengthSource;
import org.chordlog.measure.Quantity;
import org.chordlog.measure.Sentence;
import org.jspecify.annotations.Nullable;

/** The evaluated length in windows, relative to its mean, in which waves are looked for. */
final class RippleSeries {
  static final int BAND = 5;
  private static final int SIDE = 5;
  private static final double STATED_FEED_SLIP = 0.05;
  private static final double MOST_PITCH_MM = 50;
  private static final double WAVES = 6;
  private static final double NYQUIST = 0.45;

  private final List<RollerSight> seen;
  private final double halfSpanMm;
  private final double slip;
  private final double pitchMm;
  private final double[] placesMm;
  private final double[] values;

  private RippleSeries(
      Curve curve, Zone zone, EvaluationSettings settings, List<RollerSight> seen) {
    this.seen = seen;
    halfSpanMm = settings.halfSpanMm();
    slip = settings.source() == LengthSource.SPEED ? STATED_FEED_SLIP : RollerSight.SLIP;
    double shortest = seen.stream().mapToDouble(RollerSight::wavelengthMm).min().orElse(1e9);
    pitchMm = Math.min(MOST_PITCH_MM, shortest / WAVES);
    int count = (int) (zone.lengthMm() / pitchMm);
    double mean = curve.mean();
    double[][] sums = new double[count][3];
    for (int i = 0; i < curve.size(); i++) {
      int w = (int) ((curve.placeMm[i] - zone.fromMm()) / pitchMm);
      if (w < count) {
        sums[w][0]++;
        sums[w][1] += curve.placeMm[i];
        sums[w][2] += curve.bendPerMm[i] / mean;
      }
    }
    double[][] filled = Arrays.stream(sums).filter(w -> w[0] > 0).toArray(double[][]::new);
    placesMm = Arrays.stream(filled).mapToDouble(w -> w[1] / w[0]).toArray();
    values = Arrays.stream(filled).mapToDouble(w -> w[2] / w[0]).toArray();
  }

  static RippleSeries of(
      Profile profile, Zone zone, EvaluationSettings settings, List<RollerSight> sights) {
    Curve curve = Curve.of(profile, settings.model(), zone.fromMm(), zone.toMm());
    List<RollerSight> seen = sights.stream().filter(RollerSight::seen).toList();
    return new RippleSeries(curve, zone, settings, seen);
  }

  int windows() {
    return values.length;
  }

  /** Level and trend taken out. */
  Harmonic harmonic() {
    return new Harmonic(placesMm, values, true);
  }

  /** {@code before}: whose waves are taken out first, where they can be seen. */
  RippleScan scan(List<RollerSight> sights, List<RollerSight> before) {
    Sentence unfit = unfit();
    if (unfit != null) {
      return RippleScan.unfit(sights, unfit);
    }
    Harmonic series = harmonic();
    before.stream()
        .filter(RollerSight::seen)
        .forEach(sight -> series.takeOut(band(series, sight).strongest().perMm()));
    List<RippleScan.Band> bands = seen.stream().map(sight -> band(series, sight)).toList();
    RippleScan.Band strongest =
        bands.stream()
            .max(Comparator.comparingDouble(band -> band.strongest().drop()))
            .orElseThrow();
    series.takeOut(strongest.strongest().perMm());
    List<Harmonic.Line> neighbours = frequencies(bands).map(series::at).toList();
    if (neighbours.size() < WAVES) {
      return RippleScan.unfit(
          sights, Sentence.plain("there are too few neighbouring wavelengths to compare with"));
    }
    RippleScan.Lines lines =
        new RippleScan.Lines(bands, neighbours, halfSpanMm, lengthMm(), pitchMm, values.length);
    return new RippleScan(sights, lines, apart(series, strongest, bands), null);
  }

  /** The other bands without what the strongest one's wave leaves in them. */
  private List<RippleScan.Band> apart(
      Harmonic series, RippleScan.Band strongest, List<RippleScan.Band> bands) {
    return bands.stream()
        .map(band -> band.equals(strongest) ? band : band(series, band.sight()))
        .toList();
  }

  private @Nullable Sentence unfit() {
    if (seen.isEmpty()) {
      return Sentence.plain("no roller's ripple can be seen");
    }
    double longest = seen.stream().mapToDouble(RollerSight::wavelengthMm).max().orElse(0);
    return values.length < 2 || lengthMm() < WAVES * longest
        ? Sentence.of(
            "%s are evaluated, %s are needed to tell rollers apart",
            Quantity.fixed(placesMm.length * pitchMm, 0), Quantity.fixed(WAVES * longest, 0))
        : null;
  }

  private double lengthMm() {
    int n = placesMm.length;
    return (placesMm[n - 1] - placesMm[0]) * n / (n - 1);
  }

  private RippleScan.Band band(Harmonic series, RollerSight sight) {
    double low = 1 / sight.wavelengthMm() / (1 + slip);
    double high = 1 / sight.wavelengthMm() / (1 - slip);
    List<Harmonic.Line> lines = new ArrayList<>();
    for (int i = 0; i < BAND; i++) {
      lines.add(series.at(low + i * (high - low) / (BAND - 1)));
    }
    return new RippleScan.Band(sight, lines);
  }

  /** Up to five a side, 1/S apart, the first 1/S outside the outermost band. */
  private Stream<Double> frequencies(List<RippleScan.Band> bands) {
    double low = bands.stream().mapToDouble(RippleScan.Band::lowPerMm).min().orElse(0);
    double high = bands.stream().mapToDouble(RippleScan.Band::highPerMm).max().orElse(0);
    double apart = 1 / lengthMm();
    List<Double> frequencies = new ArrayList<>();
    for (int j = 1; j <= SIDE; j++) {
      frequencies.add(low - j * apart);
      frequencies.add(high + j * apart);
    }
    return frequencies.stream().filter(f -> f >= apart && f <= NYQUIST / pitchMm);
  }
}
