package org.chordlog.stats.capability;

import org.chordlog.stats.control.Estimate;
import org.chordlog.stats.control.Observation;
import org.chordlog.stats.control.Point;
import org.chordlog.stats.control.SingleTally;
import org.chordlog.stats.control.StatisticsPlan;
import org.chordlog.stats.control.SubgroupTally;
import org.chordlog.stats.math.Moments;
import org.chordlog.stats.math.Packer;
import org.chordlog.stats.math.Serial;
import org.chordlog.stats.math.Unpacker;
import org.chordlog.stats.math.Window;
import org.jspecify.annotations.Nullable;

/** All that the capability of one scope (a phase, or the whole job) is computed from. */
public final class Evidence {
  /** Part of the tolerance that six sigma of the gauge may take (ISO 22514-7: about 30 %). */
  private static final double GAUGE_SHARE = 0.3;

  private final StatisticsPlan plan;
  private final SingleTally singles = new SingleTally();
  private final SubgroupTally subgroups;
  private Serial serial = new Serial();
  private Window window = new Window();
  private @Nullable Shape shape;
  private double meanSquareUncertainty;
  private double meanBias;
  private long belowLower;
  private long aboveUpper;

  public Evidence(StatisticsPlan plan) {
    this.plan = plan;
    subgroups = new SubgroupTally(plan.charts().spread());
  }

  /** Takes in a reading that counts. */
  public void add(Observation seen) {
    double value = seen.value();
    singles.add(value);
    serial.add(value);
    window.add(value);
    shape = null;
    double u = seen.standardUncertainty();
    meanSquareUncertainty += (u * u - meanSquareUncertainty) / values().n();
    meanBias += (seen.bias() - meanBias) / values().n();
    Double lower = plan.limits().lower();
    Double upper = plan.limits().upper();
    belowLower += lower != null && value < lower ? 1 : 0;
    aboveUpper += upper != null && value > upper ? 1 : 0;
  }

  /** Takes in a subgroup that is full. */
  public void addSubgroup(Point point) {
    subgroups.add(point);
  }

  /** Another phase begins: no moving range across it. */
  public void breakRun() {
    singles.breakRun();
  }

  /** Count, mean and spread of all readings taken in. */
  public Moments values() {
    return singles.values();
  }

  /**
   * Mean of all values with sigma within subgroups, or from the moving range where values are not
   * grouped.
   */
  @Nullable Estimate within() {
    Estimate estimate = plan.subgrouped() ? subgroups.estimate() : singles.estimate();
    return estimate.known()
        ? new Estimate(values().mean(), estimate.sigma(), estimate.degreesOfFreedom())
        : null;
  }

  Estimate overall() {
    return Estimate.overall(values());
  }

  double lagOne() {
    return serial.lagOne(values().sumOfSquares());
  }

  /** Whether the shape rests on all values. */
  boolean shapeOfAll() {
    return window.complete();
  }

  /** Judged once, until the next value. */
  Shape shape() {
    Shape known = shape;
    if (known == null) {
      known = new Shape(window.values());
      shape = known;
    }
    return known;
  }

  /** Mean square of the standard uncertainties of the readings. */
  double gaugeVariance() {
    return meanSquareUncertainty;
  }

  /** What the mean is known to be off by. */
  double gaugeBias() {
    return meanBias;
  }

  /** Part of the tolerance that six standard deviations of the gauge take; 0 without one. */
  double gaugeShare() {
    Double lower = plan.limits().lower();
    Double upper = plan.limits().upper();
    return lower == null || upper == null
        ? 0
        : 6 * Math.sqrt(meanSquareUncertainty) / (upper - lower);
  }

  boolean gaugeTooCoarse() {
    return gaugeShare() > GAUGE_SHARE;
  }

  long belowLower() {
    return belowLower;
  }

  long aboveUpper() {
    return aboveUpper;
  }

  /** Writes the whole state. */
  public void pack(Packer packer) {
    singles.pack(packer);
    subgroups.pack(packer);
    serial.pack(packer);
    window.pack(packer);
    packer.put(meanSquareUncertainty).put(meanBias).put(belowLower).put(aboveUpper);
  }

  /** Reads the state that was written, of an equal plan. */
  public static Evidence unpack(StatisticsPlan plan, Unpacker from) {
    Evidence evidence = new Evidence(plan);
    evidence.singles.unpack(from);
    evidence.subgroups.unpack(from);
    evidence.serial = Serial.unpack(from);
    evidence.window = Window.unpack(from);
    evidence.meanSquareUncertainty = from.aDouble();
    evidence.meanBias = from.aDouble();
    evidence.belowLower = from.aLong();
    evidence.aboveUpper = from.aLong();
    return evidence;
  }
}
