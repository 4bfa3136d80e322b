package org.chordlog.stats.control;

import org.chordlog.stats.math.Factors;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** Grand mean, weighted by size, and sigma within subgroups from ranges and from deviations. */
public final class SubgroupTally implements Tally {
  private final Spread spread;
  private long points;
  private long values;
  private double mean;
  private WeightedSigma ranges = new WeightedSigma();
  private WeightedSigma deviations = new WeightedSigma();

  public SubgroupTally(Spread spread) {
    this.spread = spread;
  }

  @Override
  public void add(Point point) {
    points++;
    values += point.size();
    mean += (point.mean() - mean) * point.size() / values;
    if (point.size() >= Factors.LEAST) {
      Factors factors = Factors.of(point.size());
      ranges.add(point.range(), factors.d2(), factors.d3());
      deviations.add(point.deviation(), factors.c4(), factors.c5());
    }
  }

  @Override
  public long count() {
    return points;
  }

  @Override
  public Estimate estimate(ChartKind kind) {
    return switch (kind) {
      case RANGE -> estimate(ranges);
      case STANDARD_DEVIATION -> estimate(deviations);
      default -> estimate();
    };
  }

  /** With the spread that the settings name. */
  public Estimate estimate() {
    return estimate(spread == Spread.RANGE ? ranges : deviations);
  }

  private Estimate estimate(WeightedSigma sigma) {
    double centre = points == 0 ? Double.NaN : mean;
    return sigma.empty()
        ? Estimate.unknown(centre)
        : new Estimate(centre, sigma.sigma(), sigma.degreesOfFreedom());
  }

  @Override
  public void pack(Packer packer) {
    packer.put(points).put(values).put(mean);
    ranges.pack(packer);
    deviations.pack(packer);
  }

  @Override
  public void unpack(Unpacker from) {
    points = from.aLong();
    values = from.aLong();
    mean = from.aDouble();
    ranges = WeightedSigma.unpack(from);
    deviations = WeightedSigma.unpack(from);
  }
}
