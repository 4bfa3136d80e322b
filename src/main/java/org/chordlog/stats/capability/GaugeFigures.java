package org.chordlog.stats.capability;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.math.Interval;
import org.jspecify.annotations.Nullable;

/** What the gauge adds: its standard deviation, and the indices without it, σ² − u². */
final class GaugeFigures {
  private static final String SOURCE = "JCGM 100; ISO 22514-7";
  private final StatisticsPlan plan;
  private final Evidence evidence;
  private final List<Figure> figures = new ArrayList<>();

  GaugeFigures(StatisticsPlan plan, Evidence evidence) {
    this.plan = plan;
    this.evidence = evidence;
  }

  List<Figure> figures() {
    if (evidence.gaugeVariance() > 0) {
      figures.add(
          Figures.plain(
              "gaugeStandardDeviation",
              Math.sqrt(evidence.gaugeVariance()),
              plan.unit(),
              "root mean square of what is new at each placing: step, scatter, skew",
              SOURCE));
      share();
      bias();
      without("CpWithoutGauge", "CpkWithoutGauge", evidence.within());
      without("PpWithoutGauge", "PpkWithoutGauge", evidence.overall());
    }
    return figures;
  }

  private void share() {
    if (evidence.gaugeShare() > 0) {
      figures.add(
          Figures.plain(
              "gaugeShare",
              100 * evidence.gaugeShare(),
              "%",
              "six standard deviations of the gauge over the tolerance; up to 30 %",
              "ISO 22514-7"));
    }
  }

  private void bias() {
    if (evidence.gaugeBias() != 0) {
      figures.add(
          Figures.plain(
              "gaugeBias",
              evidence.gaugeBias(),
              plan.unit(),
              "mean of what a bridge out of line reads too much; included in the mean",
              "Euler 1760"));
    }
  }

  private void without(String both, String least, @Nullable Estimate estimate) {
    if (estimate == null || !plan.limits().any() || evidence.values().n() < 2) {
      return;
    }
    double variance = estimate.sigma() * estimate.sigma() - evidence.gaugeVariance();
    if (!(variance > 0)) {
      figures.add(Figures.absent(least, "", "the gauge's own variance covers all of the spread"));
      return;
    }
    Estimate pieces =
        new Estimate(estimate.mean(), Math.sqrt(variance), estimate.degreesOfFreedom());
    Capability capability = new Capability(plan.limits(), pieces, evidence.values().n());
    add(both, capability.potential());
    add(least, capability.nearer());
  }

  private void add(String name, @Nullable Interval index) {
    if (index != null) {
      figures.add(
          Figures.plain(
              name, index.value(), "", "with σ² less the mean square uncertainty", SOURCE));
    }
  }
}
