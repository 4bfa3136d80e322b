package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.chordlog.measure.Check;
import org.jspecify.annotations.Nullable;

/**
 * The gauge's standard deviation as a study of it found, in the unit of the values; an end of its
 * 95 % interval that is null is open.
 */
public record StudiedSpread(
    String study, double sigma, @Nullable Double lower, @Nullable Double upper) {
  private static final String SOURCE = "ISO 22514-7; the study's analysis of variance";

  public StudiedSpread {
    Check.text("study", study);
    Check.notNegative("sigma", sigma);
  }

  /**
   * The summary with this in place of what the readings' budgets state: the gauge's standard
   * deviation and share, and the indices without it. An index over σ² − σ_gauge² is the index times
   * σ/√(σ² − σ_gauge²), since the mean stays. Unchanged where the summary tells nothing of a gauge.
   */
  public Summary in(Summary summary) {
    List<Figure> figures = new ArrayList<>();
    summary.figures().forEach(each -> figures.add(replaced(each, summary)));
    return new Summary(
        summary.characteristic(), summary.scope(), summary.count(), figures, summary.cautions());
  }

  private Figure replaced(Figure of, Summary summary) {
    return switch (of.name()) {
      case "gaugeStandardDeviation" -> deviation(of);
      case "gaugeShare" -> share(of, summary);
      case "CpWithoutGauge" -> without(of, FigureKind.CP, FigureKind.WITHIN, summary);
      case "CpkWithoutGauge" -> without(of, FigureKind.CPK, FigureKind.WITHIN, summary);
      case "PpWithoutGauge" -> without(of, FigureKind.PP, FigureKind.OVERALL, summary);
      case "PpkWithoutGauge" -> without(of, FigureKind.PPK, FigureKind.OVERALL, summary);
      default -> of;
    };
  }

  private String by() {
    return "by the gauge study " + study;
  }

  private Figure deviation(Figure of) {
    return figure(of, sigma, lower, upper, by());
  }

  /** In proportion to the standard deviation that the budget states. */
  private Figure share(Figure of, Summary summary) {
    double stated = value(summary, FigureKind.GAUGE).orElseThrow();
    double perUnit = of.value() == null ? Double.NaN : of.value() / stated;
    return figure(
        of,
        perUnit * sigma,
        lower == null ? null : (Double) (perUnit * lower),
        upper == null ? null : (Double) (perUnit * upper),
        "six standard deviations of the gauge over the tolerance, " + by() + "; up to 30 %");
  }

  private Figure without(Figure of, FigureKind index, FigureKind spread, Summary summary) {
    Optional<Double> with = value(summary, index);
    double deviation = value(summary, spread).orElse(Double.NaN);
    double pieces = deviation * deviation - sigma * sigma;
    if (with.isEmpty() || !(pieces > 0)) {
      return figure(
          of, null, null, null, "the gauge's variance, " + by() + ", covers all of the spread");
    }
    double value = with.get() * deviation / Math.sqrt(pieces);
    return figure(of, value, null, null, "with σ² less the gauge's variance " + by());
  }

  private static Optional<Double> value(Summary summary, FigureKind kind) {
    return summary.figure(kind).map(Figure::value);
  }

  private static Figure figure(
      Figure of,
      @Nullable Double value,
      @Nullable Double lower,
      @Nullable Double upper,
      String method) {
    boolean any = lower != null || upper != null;
    return of.computed(value, any ? new Figure.Bounds(lower, upper) : null, method, SOURCE);
  }
}
