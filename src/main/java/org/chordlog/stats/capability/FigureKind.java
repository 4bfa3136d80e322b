package org.chordlog.stats.capability;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The figures of a summary: their names in the API and as printed, and what each says. */
public enum FigureKind {
  N("n", "Readings", "how many readings count"),
  MEAN("mean", "Mean", "where the readings lie on average"),
  MINIMUM("minimum", "Smallest", "the smallest reading"),
  MAXIMUM("maximum", "Largest", "the largest reading"),
  RANGE("range", "Range", "largest less smallest"),
  OVERALL(
      "standardDeviationOverall",
      "Standard deviation, overall",
      "spread of all readings, drift and steps included"),
  WITHIN(
      "standardDeviationWithin",
      "Standard deviation, within",
      "spread from reading to reading, without drift and steps"),
  SKEWNESS("skewness", "Skewness", "0 where both sides are alike"),
  KURTOSIS("kurtosis", "Excess kurtosis", "above 0: more far-off readings than a normal one has"),
  AUTOCORRELATION("autocorrelation", "Autocorrelation, lag 1", "whether neighbours are alike"),
  CP("Cp", "Cp", "room between the limits over the spread within; says nothing of the mean"),
  CPK_LOWER("CpkLower", "Cpk, lower side", "room from the lower limit to the mean, spread within"),
  CPK_UPPER("CpkUpper", "Cpk, upper side", "room from the mean to the upper limit, spread within"),
  CPK("Cpk", "Cpk", "room to the nearer limit, spread within: what a steady process could do"),
  PP("Pp", "Pp", "room between the limits over the spread overall"),
  PPK_LOWER("PpkLower", "Ppk, lower side", "room from the lower limit to the mean, spread overall"),
  PPK_UPPER("PpkUpper", "Ppk, upper side", "room from the mean to the upper limit, spread overall"),
  PPK("Ppk", "Ppk", "room to the nearer limit, spread overall: what was delivered"),
  PPK_EXACT("PpkExact", "Ppk, exact interval", "as Ppk, its interval without approximation"),
  PPK_BOOTSTRAP(
      "PpkBootstrap", "Ppk, bootstrap interval", "as Ppk, its interval without a normal shape"),
  CPM("Cpm", "Cpm", "as Pp, and a mean off the target counts against it"),
  DARLING("andersonDarling", "Anderson-Darling A²", "distance from a normal shape"),
  NORMALITY(
      "normalityPValue", "p-value of normality", "below 0.05: the shape is hardly a normal one"),
  LOW("percentile0.135", "0.135 % percentile", "where a normal one has the mean less 3 σ"),
  MIDDLE("percentile50", "50 % percentile", "the median of the fitted shape"),
  HIGH("percentile99.865", "99.865 % percentile", "where a normal one has the mean plus 3 σ"),
  PP_PERCENTILE("PpPercentile", "Pp, by percentiles", "as Pp, for the shape fitted"),
  PPK_PERCENTILE("PpkPercentile", "Ppk, by percentiles", "as Ppk, for the shape fitted"),
  BELOW_FITTED("expectedBelowPpmFitted", "Below LSL, shape fitted", "expected parts per million"),
  ABOVE_FITTED("expectedAbovePpmFitted", "Above USL, shape fitted", "expected parts per million"),
  BELOW_SEEN("observedBelowPpm", "Below LSL, seen", "parts per million of the readings"),
  ABOVE_SEEN("observedAbovePpm", "Above USL, seen", "parts per million of the readings"),
  BELOW_WITHIN("expectedBelowPpmWithin", "Below LSL, within", "expected, spread within"),
  ABOVE_WITHIN("expectedAbovePpmWithin", "Above USL, within", "expected, spread within"),
  PPM_WITHIN("expectedPpmWithin", "Outside, within", "expected in all, spread within"),
  BELOW_OVERALL("expectedBelowPpmOverall", "Below LSL, overall", "expected, spread overall"),
  ABOVE_OVERALL("expectedAbovePpmOverall", "Above USL, overall", "expected, spread overall"),
  PPM_OVERALL("expectedPpmOverall", "Outside, overall", "expected in all, spread overall"),
  GAUGE(
      "gaugeStandardDeviation",
      "Gauge, standard deviation",
      "what the gauge itself adds from reading to reading"),
  GAUGE_SHARE(
      "gaugeShare",
      "Gauge, share of the tolerance",
      "six standard deviations of the gauge; up to 30 % is good enough"),
  GAUGE_BIAS(
      "gaugeBias",
      "Gauge, known bias",
      "what readings come out too much in the mean, as a bridge is never quite in line"),
  CP_PIECES("CpWithoutGauge", "Cp, gauge taken out", "what Cp would be with a perfect gauge"),
  CPK_PIECES("CpkWithoutGauge", "Cpk, gauge taken out", "what Cpk would be with a perfect gauge"),
  PP_PIECES("PpWithoutGauge", "Pp, gauge taken out", "what Pp would be with a perfect gauge"),
  PPK_PIECES("PpkWithoutGauge", "Ppk, gauge taken out", "what Ppk would be with a perfect gauge");

  private static final Map<String, FigureKind> BY_NAME = new HashMap<>();

  static {
    for (FigureKind each : values()) {
      BY_NAME.put(each.figure, each);
    }
  }

  private final String figure;
  private final String title;
  private final String meaning;

  FigureKind(String figure, String title, String meaning) {
    this.figure = figure;
    this.title = title;
    this.meaning = meaning;
  }

  /** The figure of that name, for example {@code Cpk}; empty for a name that is not listed. */
  public static Optional<FigureKind> named(String figure) {
    return Optional.ofNullable(BY_NAME.get(figure));
  }

  /** Name in the API and in files. */
  public String figure() {
    return figure;
  }

  /** Name as printed. */
  public String title() {
    return title;
  }

  /** What it says, in plain words. */
  public String meaning() {
    return meaning;
  }
}
