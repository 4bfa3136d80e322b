package org.chordlog.stats.control;

import org.chordlog.stats.math.Factors;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Unpacker;

/** Mean of single values and sigma from their moving range of two, M̄R/d2 (ISO 7870-2). */
public final class SingleTally implements Tally {
  /** Variance of |X₁ − X₂|, and covariance of two neighbours, over sigma² (normal theory). */
  private static final double VARIANCE = 2 - 4 / Math.PI;

  private static final double COVARIANCE =
      4 / Math.PI * (Math.sqrt(0.75) + Math.PI / 12) - 4 / Math.PI;

  private Moments values = new Moments();
  private long ranges;
  private double meanRange;
  private double previous = Double.NaN;

  @Override
  public void add(Point point) {
    add(point.mean());
  }

  /** Takes in the next value. */
  public void add(double value) {
    values.add(value);
    if (!Double.isNaN(previous)) {
      meanRange += (Math.abs(value - previous) - meanRange) / ++ranges;
    }
    previous = value;
  }

  /** The next value has no predecessor. */
  public void breakRun() {
    previous = Double.NaN;
  }

  /** Count, mean and spread of all values. */
  public Moments values() {
    return values;
  }

  @Override
  public long count() {
    return values.n();
  }

  @Override
  public Estimate estimate(ChartKind kind) {
    return estimate();
  }

  /** Centre and sigma from the moving range. */
  public Estimate estimate() {
    if (ranges == 0) {
      return Estimate.unknown(values.mean());
    }
    double d2 = Factors.of(2).d2();
    double variance = (ranges * VARIANCE + 2 * (ranges - 1) * COVARIANCE) / ranges / ranges;
    return new Estimate(values.mean(), meanRange / d2, Estimate.freedom(variance / d2 / d2));
  }

  @Override
  public void pack(Packer packer) {
    values.pack(packer);
    packer.put(ranges).put(meanRange).put(previous);
  }

  @Override
  public void unpack(Unpacker from) {
    values = Moments.unpack(from);
    ranges = from.aLong();
    meanRange = from.aDouble();
    previous = from.aDouble();
  }
}
