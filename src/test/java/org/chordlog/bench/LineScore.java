package org.chordlog.bench;

import java.util.Locale;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.descriptive.DescriptiveStatistics;
import org.chordlog.measure.RadiusEstimate;
import org.chordlog.profile.LocalRadius;
import org.chordlog.profile.PieceOutcome;
import org.chordlog.profile.PieceOutcome.Measured;
import org.chordlog.profile.PieceResult;
import org.chordlog.radius.Chord;
import org.chordlog.simulator.LineErrors;
import org.chordlog.simulator.LineTruth;

/** Compares results with the truth and counts. */
final class LineScore {
  private static final int GRID = 400;
  private static final double P = 0.9772498680518208;

  int pieces;
  int refused;
  int right;
  int covered;
  int curvatureCovered;
  int sampleCovered;
  double worstStraight;
  final DescriptiveStatistics bias = new DescriptiveStatistics();
  final DescriptiveStatistics local = new DescriptiveStatistics();
  final DescriptiveStatistics common = new DescriptiveStatistics();
  final DescriptiveStatistics sample = new DescriptiveStatistics();
  final DescriptiveStatistics lost = new DescriptiveStatistics();
  final DescriptiveStatistics range = new DescriptiveStatistics();

  /** Where touch began on the piece is not known to the evaluation; {@code startMm} tells it. */
  void add(PieceOutcome outcome, LineTruth truth, double startMm, LineErrors errors) {
    pieces++;
    if (outcome instanceof Measured measured) {
      judge(measured.result(), truth, startMm, errors);
    } else {
      refused++;
    }
  }

  void add(LineScore other) {
    pieces += other.pieces;
    refused += other.refused;
    right += other.right;
    covered += other.covered;
    curvatureCovered += other.curvatureCovered;
    sampleCovered += other.sampleCovered;
    worstStraight = Math.max(worstStraight, other.worstStraight);
    add(bias, other.bias);
    add(local, other.local);
    add(common, other.common);
    add(sample, other.sample);
    add(lost, other.lost);
    add(range, other.range);
  }

  private static void add(DescriptiveStatistics into, DescriptiveStatistics from) {
    for (double value : from.getValues()) {
      into.addValue(value);
    }
  }

  private void judge(PieceResult result, LineTruth truth, double startMm, LineErrors errors) {
    double from = result.zone().fromMm() + startMm;
    double to = result.zone().toMm() + startMm;
    double shown = truth.meanShownPerMm(from, to);
    double straight = 1 - meanShare(truth, from, to);
    double ideal = truth.idealToMm() - truth.idealFromMm();
    worstStraight = Math.max(worstStraight, straight);
    right += straight < 2e-4 && to - from > 0.85 * ideal - 60 ? 1 : 0;
    lost.addValue(1 - (to - from) / ideal);
    bias.addValue(result.mean().bendPerMm() / expected(shown, truth.halfSpanMm(), errors) - 1);
    double own = result.mean().bendPerMm() - expected(shown, truth.halfSpanMm(), errors);
    double t = new TDistribution(result.mean().degreesOfFreedom()).inverseCumulativeProbability(P);
    sampleCovered += Math.abs(own) <= t * result.mean().samplePerMm() ? 1 : 0;
    covered += covers(result.mean().radius(), shown) ? 1 : 0;
    curvatureCovered += covers(result.mean().radius(), truth.meanCurvaturePerMm(from, to)) ? 1 : 0;
    sample.addValue(result.mean().samplePerMm() / shown);
    double u = result.mean().radius().standardUncertaintyPerMm();
    common.addValue(
        Math.sqrt(u * u - result.mean().samplePerMm() * result.mean().samplePerMm()) / shown);
    places(result, truth, startMm, shown);
  }

  /** What a gauge with those errors shows of a curvature: the bias is what is left after them. */
  private static double expected(double shownPerMm, double half, LineErrors errors) {
    double bend = shownPerMm * (1 + errors.curvatureShare());
    double depth = Chord.depthMm(bend, 2 * half, 0) + errors.depthMm();
    return Chord.curvaturePerMm(depth, 2 * half, 0);
  }

  private void places(PieceResult result, LineTruth truth, double startMm, double mean) {
    int within = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    double half = result.windowMm() / 2;
    for (LocalRadius place : result.places()) {
      double at = place.placeMm() + startMm;
      double shown = truth.meanShownPerMm(at - half, at + half);
      within += covers(place.radius(), shown) ? 1 : 0;
      least = Math.min(least, shown);
      most = Math.max(most, shown);
    }
    local.addValue((double) within / result.places().size());
    range.addValue(result.uniformity().rangePercent() - 100 * (most - least) / mean);
  }

  private static boolean covers(RadiusEstimate radius, double bendPerMm) {
    Double upper = radius.upperMm();
    return 1 / bendPerMm >= radius.lowerMm() && (upper == null || 1 / bendPerMm <= upper);
  }

  /** Mean share of the full bend that a bridge shows between two places. */
  private static double meanShare(LineTruth truth, double from, double to) {
    double half = truth.halfSpanMm();
    double sum = 0;
    for (int i = 0; i < GRID; i++) {
      double at = from + (to - from) * (i + 0.5) / GRID;
      boolean full = at >= truth.idealFromMm() && at <= truth.idealToMm();
      sum += full ? 1 : share(truth, at, (int) half);
    }
    return sum / GRID;
  }

  private static double share(LineTruth truth, double at, int half) {
    double sum = 0;
    for (int j = -half; j <= half; j++) {
      sum += truth.ramp(at + j) * (half - Math.abs(j));
    }
    return sum / half / half;
  }

  double coverage() {
    return 100.0 * covered / (pieces - refused);
  }

  double coverageError() {
    double p = coverage() / 100;
    return 100 * Math.sqrt(p * (1 - p) / (pieces - refused));
  }

  double biasError() {
    return 1e4 * bias.getStandardDeviation() / Math.sqrt((double) bias.getN());
  }

  static String head() {
    return "| case | pieces | refused | zones right % | worst straight share, 1e-4 | length lost %"
        + " | bias of mean, 1e-4 | u common / sample, 1e-4 | coverage % | of the sample part % | of mean curvature %"
        + " | local % | range too wide by % |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|";
  }

  String row(String name) {
    return String.format(
        Locale.ROOT,
        "| %s | %d | %d | %.1f | %.2f | %.1f | %+.2f ± %.2f | %.1f / %.2f | %.1f ± %.1f | %.1f |"
            + " %.1f | %.1f | %.3f |",
        name,
        pieces,
        refused,
        100.0 * right / pieces,
        1e4 * worstStraight,
        100 * lost.getMean(),
        1e4 * bias.getMean(),
        biasError(),
        1e4 * common.getMean(),
        1e4 * sample.getMean(),
        coverage(),
        coverageError(),
        100.0 * sampleCovered / (pieces - refused),
        100.0 * curvatureCovered / (pieces - refused),
        100 * local.getMean(),
        range.getMean());
  }
}
