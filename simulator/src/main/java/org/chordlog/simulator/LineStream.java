package org.chordlog.simulator;

import java.util.ArrayList;
import java.util.List;

/** A line's values one after the other in invented time, as fast as they are asked for. */
public final class LineStream {
  private final VirtualLine line;
  private final VirtualIndicator indicator;
  private final List<LineTruth> truths = new ArrayList<>();
  private final double period;
  private final double onFlatMm;
  private final double mmPerCount;
  private long values;
  private double seconds;
  private long depthNm;
  private long counts;

  public LineStream(LineScenario scenario, LineErrors errors, long seed) {
    line = new VirtualLine(scenario, errors, seed, truths::add);
    indicator = new VirtualIndicator(scenario.indicator(), seed + 2);
    period = 1 / scenario.indicator().valuesPerSecond();
    onFlatMm = scenario.indicator().showsOnFlatMm();
    mmPerCount = scenario.line().encoder().mmPerCount();
  }

  /** Steps to the next value. */
  public void next() {
    seconds = values++ * period;
    long flatNm = Math.round(onFlatMm * 1e6);
    depthNm = indicator.shownNm(line.pushedInMm(seconds), seconds) - flatNm;
    counts = line.counts(seconds);
  }

  public double seconds() {
    return seconds;
  }

  /** What is shown less what is shown on a flat. */
  public long depthNm() {
    return depthNm;
  }

  public long counts() {
    return counts;
  }

  public long lengthNm() {
    return Math.round(counts * mmPerCount * 1e6);
  }

  /** The pieces that have come under the gauge, and the one that comes next. */
  public List<LineTruth> truths() {
    return truths;
  }
}
