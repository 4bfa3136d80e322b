package org.chordlog.bench.shopfloor;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Whether what was stated was true, over many jobs. */
public final class Judgement {
  private long levels;
  private long inside;
  private long promises;
  private long kept;
  private double stated;
  private final List<Double> gains = new ArrayList<>();

  void level(double standardised) {
    levels++;
    inside += Math.abs(standardised) < 2 ? 1 : 0;
  }

  void promise(double chance, boolean better) {
    promises++;
    stated += chance;
    kept += better ? 1 : 0;
  }

  /** Learned gain over the true one at the end of a job. */
  void gain(double ratio) {
    gains.add(ratio);
  }

  /** Share of stated levels with the true one inside ± 2 u, percent. */
  public double insidePercent() {
    return 100.0 * inside / levels;
  }

  public double keptPercent() {
    return 100.0 * kept / promises;
  }

  public double statedPercent() {
    return 100 * stated / promises;
  }

  /** Share of jobs that end with the right sign of the gain, percent. */
  public double signRightPercent() {
    return 100.0 * gains.stream().filter(gain -> gain > 0).count() / gains.size();
  }

  /** Of the gains at the end over the true one. */
  public double gainQuantile(double share) {
    List<Double> sorted = new ArrayList<>(gains);
    Collections.sort(sorted);
    return sorted.get((int) Math.round(share * (sorted.size() - 1)));
  }
}
