package org.chordlog.correction;

import java.util.Arrays;
import java.util.List;

/** What may lie behind a reading: a belief before it, the reading's variance, its probability. */
record Hypothesis(double chance, Belief before, double variance) {
  private double logWeight(double reading) {
    double total = before.levelVariance() + variance;
    double innovation = reading - before.level();
    return Math.log(chance) - Math.log(total) / 2 - innovation * innovation / (2 * total);
  }

  /** The belief after a reading, all hypotheses collapsed to one Gaussian, and their weights. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Heard(Belief belief, double[] weights) {}

  /** First-order generalised pseudo-Bayes: one Gaussian after each reading. */
  static Heard hear(List<Hypothesis> all, double reading) {
    double[] weights = all.stream().mapToDouble(each -> each.logWeight(reading)).toArray();
    double most = Arrays.stream(weights).max().orElseThrow();
    double sum = 0;
    for (int k = 0; k < weights.length; k++) {
      weights[k] = Math.exp(weights[k] - most);
      sum += weights[k];
    }
    for (int k = 0; k < weights.length; k++) {
      weights[k] /= sum;
    }
    List<Belief> after =
        all.stream().map(each -> each.before.heard(reading, each.variance)).toList();
    return new Heard(Belief.mixture(after, weights), weights);
  }
}
