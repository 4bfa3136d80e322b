package org.chordlog.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The extreme of a contact in which the bridge is rocked. Each time the value comes near it, a
 * parabola over the neighbouring samples gives the turning point, so that noise does not make the
 * extreme more extreme. The median of turning points that agree is taken; one that no other comes
 * near is a stray value.
 */
final class Rocking {
  private static final double CAP_SHARE = 0.1;
  private static final double MOST_CAP_SHARE = 0.4;

  /** A parabola over so many samples shows a stray one. */
  private static final int ENOUGH_SAMPLES = 8;

  /** Median of |x| of a standard normal x. */
  private static final double NORMAL_MEDIAN = 0.6745;

  private final CaptureSettings settings;
  private final int sign;
  private final double bandNm;
  private final ContactTrace trace = new ContactTrace();
  private long toleratedErrorNm;

  /** The extreme, the standard deviation of the samples about their parabolas, their count. */
  record Extremum(long valueNm, long scatterNm, int samples) {}

  /** One way past the extreme, or a stretch in which nobody rocked. */
  private record Turn(double heightNm, double scatterNm, int samples) {}

  Rocking(CaptureSettings settings) {
    this.settings = settings;
    sign = settings.extreme().sign();
    bandNm = (double) settings.bandNm();
  }

  void meanMayErrBy(long standardErrorNm) {
    toleratedErrorNm = standardErrorNm;
  }

  ContactTrace trace() {
    return trace;
  }

  /** Null where no turning point is to be seen. */
  @Nullable Extremum extremum() {
    RockedHeights rocked = RockedHeights.of(trace, sign, bandNm);
    if (rocked.size() < settings.leastSamples()) {
      return null;
    }
    double noise = noise(rocked.heights());
    double near = Math.max(bandNm / 2, 3 * noise);
    List<Turn> agreeing = agreeing(turns(rocked, noise), near);
    return agreeing.isEmpty() ? null : average(agreeing);
  }

  /** The highest turns that are near each other; a single one of many is not believed. */
  private static List<Turn> agreeing(List<Turn> turns, double near) {
    List<Turn> sorted =
        turns.stream().sorted(Comparator.comparingDouble(Turn::heightNm).reversed()).toList();
    for (Turn highest : sorted) {
      List<Turn> close =
          turns.stream()
              .filter(t -> t.heightNm <= highest.heightNm && t.heightNm >= highest.heightNm - near)
              .toList();
      if (close.size() > 1 || turns.size() == 1) {
        return close;
      }
    }
    return List.of();
  }

  private List<Turn> turns(RockedHeights rocked, double noise) {
    double[] heights = rocked.heights();
    double top = top(heights);
    double swing = top - lowestBetween(heights, top - Math.max(bandNm, 2 * medianStep(heights)));
    double still = Math.max(bandNm, 6 * noise);
    if (swing <= still) {
      return unrocked(rocked, top - still);
    }
    double least = Math.max(CAP_SHARE * swing, Math.min(3 * noise, 0.35 * swing));
    double between = Math.max(bandNm / 2, 3 * noise);
    List<Turn> found = turns(rocked, top, swing, new Cap(least, between));
    for (double cap = 1.4 * least; cap < mostCap(swing) && !suffice(found); cap *= 1.4) {
      found = turns(rocked, top, swing, new Cap(cap, between));
    }
    return found;
  }

  /**
   * A parabola over the top of a harmonic swing, down to {@code cap}, peaks cap²/(35·swing) too low
   * (the least squares of its term of fourth order): at most a quarter of a step.
   */
  private double mostCap(double swing) {
    return Math.min(MOST_CAP_SHARE * swing, Math.sqrt(35 * swing * settings.resolutionNm() / 4.0));
  }

  private static boolean suffice(List<Turn> found) {
    return !found.isEmpty() && found.stream().allMatch(turn -> turn.samples >= ENOUGH_SAMPLES);
  }

  /**
   * How far below the top still belongs to a turning point, and how much further down it must go
   * before the next one.
   */
  private record Cap(double depthNm, double betweenNm) {
    double gone() {
      return depthNm + Math.min(depthNm, betweenNm);
    }
  }

  /** Ways past the top. */
  private List<Turn> turns(RockedHeights rocked, double top, double swing, Cap cap) {
    double[] heights = rocked.heights();
    List<Turn> found = new ArrayList<>();
    int from = -1;
    int last = -1;
    for (int i = 0; i < heights.length; i++) {
      if (heights[i] > top - cap.depthNm) {
        from = from < 0 ? i : from;
        last = i;
      } else if (from >= 0 && heights[i] < top - cap.gone()) {
        keep(rocked, from, last, top - swing - cap.depthNm, found);
        from = -1;
      }
    }
    return found;
  }

  /** Nobody rocked: all that is near the top is one rest. */
  private List<Turn> unrocked(RockedHeights rocked, double floor) {
    double[] near = Arrays.stream(rocked.heights()).filter(h -> h >= floor).toArray();
    double middle = Parabola.median(near);
    double[] off = Arrays.stream(near).map(h -> Math.abs(h - middle)).toArray();
    double limit = Math.max(bandNm, 4 * Parabola.median(off) / NORMAL_MEDIAN);
    double[] kept = Arrays.stream(near).filter(h -> Math.abs(h - middle) <= limit).toArray();
    double mean = Arrays.stream(kept).average().orElseThrow();
    double squares = Arrays.stream(kept).map(h -> (h - mean) * (h - mean)).sum();
    double scatter = Math.sqrt(squares / Math.max(1, kept.length - 1));
    return List.of(new Turn(mean, scatter, kept.length));
  }

  /** Highest of the middles of three neighbours. */
  private static double top(double[] heights) {
    double top = Double.NEGATIVE_INFINITY;
    for (int i = 1; i < heights.length - 1; i++) {
      double low = Math.min(heights[i - 1], heights[i]);
      double high = Math.max(heights[i - 1], heights[i]);
      top = Math.max(top, Math.max(low, Math.min(high, heights[i + 1])));
    }
    return top;
  }

  /** The lowest between the first and the last that reach a height: how far it was rocked. */
  private static double lowestBetween(double[] heights, double height) {
    int first = 0;
    while (heights[first] < height) {
      first++;
    }
    int last = heights.length - 1;
    while (heights[last] < height) {
      last--;
    }
    return Arrays.stream(heights, first, last + 1).min().orElseThrow();
  }

  private static double medianStep(double[] heights) {
    double[] steps = new double[heights.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = Math.abs(heights[i + 1] - heights[i]);
    }
    return Parabola.median(steps);
  }

  /**
   * Standard deviation by the median of second differences, to which a smooth movement adds
   * nothing; at most what a rest may have.
   */
  private double noise(double[] heights) {
    double[] bends = new double[heights.length - 2];
    for (int i = 0; i < bends.length; i++) {
      bends[i] = Math.abs(heights[i] - 2 * heights[i + 1] + heights[i + 2]);
    }
    double most = Math.max(bandNm / 2, (double) mostNoiseNm(settings.leastSamples()));
    return Math.min(Parabola.median(bends) / (NORMAL_MEDIAN * Math.sqrt(6)), most);
  }

  /**
   * Keeps a way past the extreme that came from below and went below again. One or two samples take
   * their neighbours in, unless these are on the way down or up.
   */
  private void keep(RockedHeights rocked, int from, int to, double floor, List<Turn> found) {
    double[] heights = rocked.heights();
    if (from == 0) {
      return;
    }
    boolean narrow = to - from < 2;
    int first = narrow && heights[from - 1] >= floor ? from - 1 : from;
    int last = narrow && heights[to + 1] >= floor ? to + 1 : to;
    if (last - first < 2) {
      return;
    }
    Parabola parabola =
        Parabola.robust(
            Arrays.copyOfRange(rocked.places(), first, last + 1),
            Arrays.copyOfRange(heights, first, last + 1),
            (double) settings.resolutionNm());
    if (parabola.peaks() && parabola.scatter() <= mostScatter(parabola.count())) {
      found.add(new Turn(parabola.peak(), parabola.scatter(), parabola.count()));
    }
  }

  private static double middle(List<Turn> turns) {
    return Parabola.median(turns.stream().mapToDouble(Turn::heightNm).toArray());
  }

  /** Null for too few samples, or for samples that scatter about their parabolas. */
  private @Nullable Extremum average(List<Turn> turns) {
    double squares = 0;
    int samples = 0;
    for (Turn turn : turns) {
      squares += turn.samples * turn.scatterNm * turn.scatterNm;
      samples += turn.samples;
    }
    double scatter = samples == 0 ? 0 : Math.sqrt(squares / samples);
    return samples < settings.leastSamples() || scatter > mostScatter(samples)
        ? null
        : new Extremum(sign * Math.round(middle(turns)), Math.round(scatter), samples);
  }

  private long mostNoiseNm(int samples) {
    return settings.mostNoiseNm(samples, toleratedErrorNm);
  }

  private double mostScatter(int samples) {
    return Math.max(bandNm, 2.0 * mostNoiseNm(samples));
  }
}
