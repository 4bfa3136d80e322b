package org.chordlog.profile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.apache.commons.statistics.distribution.FDistribution;
import org.chordlog.profile.RollerVerdict.Finding;
import org.jspecify.annotations.Nullable;

/**
 * Compares each roller's band with its neighbouring wavelengths. Curvature wanders by itself, and
 * the bridge smooths it over its span, so that no model of the noise is assumed but that it is
 * smooth in frequency. Power of M pieces on the neighbours' curve follows F with 2M and the curve's
 * degrees of freedom; the phases of the pieces are unrelated.
 */
public final class RollerSearch {
  /** A roller is named below this; the curve is nearly right only, so it is well below 1 %. */
  public static final double PROBABILITY = 0.003;

  /** The same of two waves a turn: there the curve is less right, and one more look is taken. */
  public static final double PROBABILITY_TWICE = 0.001;

  private static final double TOLD = 20;

  private final List<RippleScan.Lines> lines;
  private final List<RollerSight> sights;
  private final double named;
  private final NeighbourCurve curve;

  private RollerSearch(List<RippleScan.Lines> lines, List<RollerSight> sights, double named) {
    this.lines = lines;
    this.sights = sights;
    this.named = named;
    List<Harmonic.Line> neighbours =
        lines.stream().flatMap(line -> line.neighbours().stream()).toList();
    curve = new NeighbourCurve(neighbours, lines.get(0).halfSpanMm());
  }

  /** One piece or several with the same rollers; pieces that are not fit are left out. */
  public static RollerVerdict verdict(List<RippleScan> scans) {
    return verdict(scans, PROBABILITY);
  }

  /** The same; a roller is named below that probability. */
  public static RollerVerdict verdict(List<RippleScan> scans, double named) {
    List<RippleScan.Lines> lines =
        scans.stream().map(RippleScan::lines).filter(Objects::nonNull).toList();
    RippleScan last = scans.get(scans.size() - 1);
    List<RippleScan.Lines> alike = lines.stream().filter(l -> alike(l, lines)).toList();
    if (alike.isEmpty()) {
      return new RollerVerdict(0, last.sights(), List.of(), new Finding.NoRipple(), last.unfit());
    }
    return new RollerSearch(alike, last.sights(), named).verdict();
  }

  private static boolean alike(RippleScan.Lines some, List<RippleScan.Lines> all) {
    RippleScan.Lines last = all.get(all.size() - 1);
    return some.halfSpanMm() == last.halfSpanMm()
        && some.bands().stream()
            .map(band -> band.sight().roller())
            .toList()
            .equals(last.bands().stream().map(band -> band.sight().roller()).toList());
  }

  private RollerVerdict verdict() {
    List<RollerRipple> ripples = new ArrayList<>();
    for (int band = 0; band < bands().size(); band++) {
      ripples.add(ripple(band));
    }
    ripples.sort(Comparator.comparingDouble(RollerRipple::probability));
    return new RollerVerdict(lines.size(), sights, ripples, finding(ripples), null);
  }

  private List<RippleScan.Band> bands() {
    return lines.get(lines.size() - 1).bands();
  }

  private RollerRipple ripple(int band) {
    int best = strongest(band);
    double most = againstNeighbours(band, best);
    RippleScan.Band of = bands().get(band);
    double[] amplitude = amplitude(band, best);
    return new RollerRipple(
        of.sight().roller(),
        1 / of.lines().get(best).perMm(),
        100 * amplitude[0],
        100 * amplitude[1],
        most,
        probability(most, of));
  }

  private int strongest(int band) {
    int best = 0;
    for (int i = 1; i < RippleSeries.BAND; i++) {
      best = againstNeighbours(band, i) > againstNeighbours(band, best) ? i : best;
    }
    return best;
  }

  /** Mean power of the pieces over that of the neighbours' curve. */
  private double againstNeighbours(int band, int line) {
    double sum = 0;
    for (RippleScan.Lines piece : lines) {
      Harmonic.Line at = piece.bands().get(band).lines().get(line);
      sum += at.drop() / curve.powerAt(at.perMm());
    }
    return sum / lines.size();
  }

  /** How many independent looks a band is worth, times the number of bands. */
  private double probability(double power, RippleScan.Band band) {
    double length = lines.stream().mapToDouble(RippleScan.Lines::lengthMm).average().orElse(0);
    double looks = 1 + 2 * (band.highPerMm() - band.lowPerMm()) * length;
    double tail = FDistribution.of(2.0 * lines.size(), curve.degrees()).survivalProbability(power);
    return Math.min(1, tail * looks * bands().size());
  }

  /**
   * Relative amplitude on the piece and its standard uncertainty: of one piece by least squares, of
   * several the root of the mean square less what noise adds to it.
   */
  private double[] amplitude(int band, int line) {
    double squares = 0;
    double noises = 0;
    for (RippleScan.Lines piece : lines) {
      Harmonic.Line at = piece.bands().get(band).lines().get(line);
      double shown =
          Transfer.share(piece.halfSpanMm(), 1 / at.perMm())
              * Transfer.sinc(piece.pitchMm() * at.perMm());
      double noise = curve.powerAt(at.perMm()) / piece.windows();
      squares += at.amplitude() * at.amplitude() / (shown * shown);
      noises += noise / (shown * shown);
    }
    int m = lines.size();
    double square = m == 1 ? squares : Math.max(0, (squares - 2 * noises) / m);
    return new double[] {Math.sqrt(square), Math.sqrt(noises) / m};
  }

  private Finding finding(List<RollerRipple> ripples) {
    RollerRipple first = ripples.get(0);
    if (first.probability() >= named) {
      return new Finding.NoRipple();
    }
    for (RollerRipple other : ripples.subList(1, ripples.size())) {
      boolean near = other.probability() < TOLD * first.probability();
      if (near || overlap(first, other)) {
        return new Finding.OneOfTwo(first.roller(), other.roller(), neededMm(first, other));
      }
    }
    return new Finding.Named(first.roller());
  }

  private boolean overlap(RollerRipple one, RollerRipple other) {
    RippleScan.Band a = band(one);
    RippleScan.Band b = band(other);
    return a.lowPerMm() <= b.highPerMm() && b.lowPerMm() <= a.highPerMm();
  }

  private RippleScan.Band band(RollerRipple ripple) {
    return bands().stream()
        .filter(band -> band.sight().roller().equals(ripple.roller()))
        .findFirst()
        .orElseThrow();
  }

  /** 1/|f₁ − f₂|, null where slip makes the two overlap whatever the length. */
  private @Nullable Double neededMm(RollerRipple one, RollerRipple other) {
    if (overlap(one, other)) {
      return null;
    }
    double a = 1 / band(one).sight().wavelengthMm();
    double b = 1 / band(other).sight().wavelengthMm();
    return 1 / Math.abs(a - b);
  }

  /** What each roller's ripple on this one piece adds to its chart, in the order of the bands. */
  static List<RipplePoint> points(RippleScan.Lines piece) {
    RollerSearch one = new RollerSearch(List.of(piece), List.of(), PROBABILITY);
    List<RipplePoint> points = new ArrayList<>();
    for (int band = 0; band < piece.bands().size(); band++) {
      points.add(one.point(band));
    }
    return points;
  }

  /**
   * Evidence averaged over the band: −ln of F's tail is exponential with mean 1 by chance alone.
   */
  private RipplePoint point(int band) {
    FDistribution chance = FDistribution.of(2, curve.degrees());
    double evidence = 0;
    for (int line = 0; line < RippleSeries.BAND; line++) {
      double tail = chance.survivalProbability(againstNeighbours(band, line));
      evidence -= StrictMath.log(Math.max(tail, Double.MIN_NORMAL)) / RippleSeries.BAND;
    }
    double[] amplitude = amplitude(band, strongest(band));
    double variance = amplitude[1] * amplitude[1];
    return new RipplePoint(
        bands().get(band).sight().roller().name(),
        evidence,
        1e4 * (amplitude[0] * amplitude[0] - 2 * variance),
        1e4 * variance);
  }
}
