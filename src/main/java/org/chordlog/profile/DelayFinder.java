package org.chordlog.profile;

import java.util.Arrays;
import java.util.Locale;
import org.chordlog.measure.BadInput;

/**
 * Finds how much later depths come than their lengths, from one bent piece that is run forth and
 * back at an even feed: each edge shows further on going forth than going back by the delay times
 * both feeds. What comes after a second turn is left out. One thread.
 */
public final class DelayFinder {
  private static final double MOST_MS = 200;
  private static final double LEAST_UNCERTAINTY_MS = 1;
  private static final int MOST_BINS = 4000;
  private static final int NEAR = 20;
  private static final long TURNED_NM = 10_000_000;

  private final int sign;
  private final Way forth = new Way();
  private final Way back = new Way();
  private boolean started;
  private long startNm;
  private long farNm;
  private boolean backwards;
  private long lowNm;
  private boolean forthAgain;

  /** Concave: a bend makes depths negative, as on the inner face. */
  public DelayFinder(boolean concave) {
    sign = concave ? -1 : 1;
  }

  /** The delay and its standard uncertainty, ms. */
  public record Delay(double ms, double uncertaintyMs) {}

  /** Sums of depth, place and time in bins of 5 mm. */
  private static final class Way {
    private final long[] count = new long[MOST_BINS];
    private final double[] depth = new double[MOST_BINS];
    private final double[] place = new double[MOST_BINS];
    private final double[] seconds = new double[MOST_BINS];

    void add(int bin, long depthNm, long placeNm, long nanos) {
      count[bin]++;
      depth[bin] += depthNm / 1e6;
      place[bin] += placeNm / 1e6;
      seconds[bin] += nanos / 1e9;
    }
  }

  /** A place where half the level is crossed, and the feed there. */
  private record Crossing(double placeMm, double mmPerSecond) {}

  /** A depth less its zero while the plunger touches, with the length that came with it. */
  public void offer(long nanos, long lengthNm, long depthNm) {
    if (!started) {
      started = true;
      startNm = lengthNm;
      farNm = 0;
    }
    long placeNm = lengthNm - startNm;
    int bin = FineBins.index(placeNm);
    turn(placeNm);
    if (bin >= 0 && bin < MOST_BINS && !forthAgain) {
      (backwards ? back : forth).add(bin, sign * depthNm, placeNm, nanos);
    }
  }

  private void turn(long placeNm) {
    if (!backwards && placeNm < farNm - TURNED_NM) {
      backwards = true;
      lowNm = placeNm;
    }
    farNm = Math.max(farNm, placeNm);
    lowNm = Math.min(lowNm, placeNm);
    forthAgain |= backwards && placeNm > lowNm + TURNED_NM;
  }

  /** Refused where an edge was not passed both ways, or the delay is beyond 200 ms. */
  public Delay delay() {
    double first = delayMs(true);
    double last = delayMs(false);
    double delay = (first + last) / 2;
    if (Math.abs(delay) > MOST_MS) {
      throw new BadInput(
          "delay", String.format(Locale.ROOT, "%.0f ms", delay), "is not believed", "200 ms");
    }
    return new Delay(delay, Math.max(LEAST_UNCERTAINTY_MS, Math.abs(first - last) / 2));
  }

  private double delayMs(boolean rising) {
    Crossing there = crossing(forth, rising);
    Crossing andBack = crossing(back, rising);
    return 1000
        * (there.placeMm() - andBack.placeMm())
        / (there.mmPerSecond() + andBack.mmPerSecond());
  }

  private static Crossing crossing(Way way, boolean rising) {
    int n = 0;
    double[] depth = new double[MOST_BINS];
    double[] place = new double[MOST_BINS];
    double[] seconds = new double[MOST_BINS];
    for (int i = 0; i < MOST_BINS; i++) {
      if (way.count[i] > 0) {
        depth[n] = way.depth[i] / way.count[i];
        place[n] = way.place[i] / way.count[i];
        seconds[n++] = way.seconds[i] / way.count[i];
      }
    }
    int at = n < 2 ? -1 : edge(Arrays.copyOf(depth, n), rising);
    if (at < 0) {
      throw new BadInput(
          "delay",
          "the run",
          "did not pass both edges forth and back",
          "one bent piece, both ways");
    }
    double half = half(Arrays.copyOf(depth, n));
    double share = (half - depth[at]) / (depth[at + 1] - depth[at]);
    int from = Math.max(0, at - NEAR);
    int to = Math.min(n - 1, at + NEAR);
    return new Crossing(
        place[at] + share * (place[at + 1] - place[at]),
        Math.abs((place[to] - place[from]) / (seconds[to] - seconds[from])));
  }

  private static double half(double[] depth) {
    return Percentile.of(depth, 0.8) / 2;
  }

  /** Bin behind which half the level is first reached, or last left; -1 if never. */
  private static int edge(double[] depth, boolean rising) {
    double half = half(depth);
    for (int k = 0; k < depth.length - 1; k++) {
      int i = rising ? k : depth.length - 2 - k;
      boolean crosses =
          rising
              ? depth[i] < half && depth[i + 1] >= half
              : depth[i] >= half && depth[i + 1] < half;
      if (crosses) {
        return i;
      }
    }
    return -1;
  }
}
