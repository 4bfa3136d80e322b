package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.ChiSquaredDistribution;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Interval;
import org.chordlog.stats.math.MeanInterval;
import org.chordlog.stats.math.Moments;

/** Count, location and spread, with intervals. */
final class DescriptiveFigures {
  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final List<Figure> figures = new ArrayList<>();

  DescriptiveFigures(StatisticsPlan plan, Evidence evidence) {
    this.plan = plan;
    this.evidence = evidence;
  }

  List<Figure> figures() {
    Moments values = evidence.values();
    figures.add(Figures.plain("n", (double) values.n(), "", "count of readings", ""));
    if (values.n() > 0) {
      mean(values);
      length("minimum", values.least(), "smallest value");
      length("maximum", values.most(), "largest value");
      length("range", values.most() - values.least(), "maximum - minimum");
      overall(values);
      within();
      shape(values);
    }
    return figures;
  }

  private void length(String name, double value, String method) {
    figures.add(Figures.plain(name, value, plan.unit(), method, ""));
  }

  private void mean(Moments values) {
    Interval mean = MeanInterval.of(values);
    figures.add(
        Figures.ranged(
            "mean",
            mean.value(),
            mean.lower(),
            mean.upper(),
            plan.unit(),
            "arithmetic mean; interval by Student's t",
            "ISO 7870-2; Welford 1962"));
  }

  private void overall(Moments values) {
    deviation(
        "standardDeviationOverall",
        values.deviation(),
        values.n() - 1.0,
        "root of Σ(x - mean)²/(n - 1)" + Figures.CHI_SQUARE);
  }

  private void within() {
    Estimate within = evidence.within();
    if (within == null) {
      figures.add(
          Figures.absent("standardDeviationWithin", plan.unit(), "needs two values in a subgroup"));
    } else {
      deviation(
          "standardDeviationWithin",
          within.sigma(),
          within.degreesOfFreedom(),
          Figures.withinMethod(plan) + Figures.CHI_SQUARE_WITHIN);
    }
  }

  private void deviation(String name, double sigma, double freedom, String method) {
    if (Double.isNaN(sigma)) {
      figures.add(Figures.absent(name, plan.unit(), "needs two values"));
      return;
    }
    ChiSquaredDistribution chi = ChiSquaredDistribution.of(freedom);
    figures.add(
        Figures.ranged(
            name,
            sigma,
            sigma * Math.sqrt(freedom / chi.inverseCumulativeProbability(0.975)),
            sigma * Math.sqrt(freedom / chi.inverseCumulativeProbability(0.025)),
            plan.unit(),
            method,
            "ISO 7870-2"));
  }

  private void shape(Moments values) {
    String source = "Joanes and Gill 1998";
    shape("skewness", values.skewness(), 3, "adjusted Fisher-Pearson G1", source);
    shape("kurtosis", values.kurtosis(), 4, "excess kurtosis G2", source);
    shape("autocorrelation", evidence.lagOne(), 3, "lag 1, Σ(yᵢ-ȳ)(yᵢ₊₁-ȳ)/Σ(yᵢ-ȳ)²", "NIST StRD");
  }

  private void shape(String name, double value, int least, String method, String source) {
    figures.add(
        Double.isFinite(value)
            ? Figures.plain(name, value, "", method, source)
            : Figures.absent(name, "", "needs " + least + " readings that are not all equal"));
  }
}
