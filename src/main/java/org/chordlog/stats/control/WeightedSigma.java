package org.chordlog.stats.control;

import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/**
 * Sigma from ranges or standard deviations of subgroups of unequal size, each weighted by the
 * inverse of its variance (Burr 1969, Technometrics 11, 163-167); with equal sizes R̄/d2 or s̄/c4.
 */
final class WeightedSigma {
  private double weight;
  private double mean;

  /** A spread, what it is expected to be and its standard deviation, both over sigma. */
  void add(double spread, double expected, double deviation) {
    double added = expected * expected / (deviation * deviation);
    weight += added;
    mean += (spread / expected - mean) * added / weight;
  }

  boolean empty() {
    return weight == 0;
  }

  double sigma() {
    return mean;
  }

  double degreesOfFreedom() {
    return Estimate.freedom(1 / weight);
  }

  void pack(Packer packer) {
    packer.put(weight).put(mean);
  }

  static WeightedSigma unpack(Unpacker from) {
    WeightedSigma sigma = new WeightedSigma();
    sigma.weight = from.aDouble();
    sigma.mean = from.aDouble();
    return sigma;
  }
}
