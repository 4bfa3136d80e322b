package org.chordlog.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.chordlog.measure.Sample;
import org.jspecify.annotations.Nullable;

/**
 * The samples of one contact in which the bridge is rocked, and their extreme. Each time the value
 * comes near it, a parabola of least squares over the neighbouring samples gives the turning point,
 * so that noise does not make the extreme more extreme; turning points that agree are averaged.
 */
final class Rocking {
  private static final int MOST_SAMPLES = 1 << 16;
  private static final long LANDING_NANOS = 250_000_000L;
  private static final double LANDED_SHARE = 0.9;
  private static final double CAP_SHARE = 0.1;

  /** Median of |x| of a standard normal x. */
  private static final double NORMAL_MEDIAN = 0.6745;

  private final int sign;
  private final double bandNm;
  private final LongRing times = new LongRing();
  private final LongRing values = new LongRing();
  private final LongRing pushedIn = new LongRing();
  private final LongRing sequences = new LongRing();

  /** The extreme, the standard deviation of the samples about their parabolas, their count. */
  record Extremum(long valueNm, long scatterNm, int samples) {}

  Rocking(CaptureSettings settings) {
    sign = settings.extreme() == Extreme.HIGHEST ? 1 : -1;
    bandNm = (double) settings.bandNm();
  }

  void clear() {
    times.clear();
    values.clear();
    pushedIn.clear();
    sequences.clear();
  }

  void add(Sample sample, long pushedInNm) {
    if (values.size() == MOST_SAMPLES) {
      times.removeFirst();
      values.removeFirst();
      pushedIn.removeFirst();
      sequences.removeFirst();
    }
    times.addLast(sample.monotonicNanos());
    values.addLast(sample.valueNm());
    pushedIn.addLast(pushedInNm);
    sequences.addLast(sample.sequence());
  }

  long firstSequence() {
    return sequences.first();
  }

  long lastSequence() {
    return sequences.last();
  }

  /** Null where no turning point is to be seen. */
  @Nullable Extremum extremum() {
    double[] heights = landed();
    if (heights.length < 3) {
      return null;
    }
    List<Parabola> turns = turns(heights);
    if (turns.isEmpty()) {
      return null;
    }
    double highest = turns.stream().mapToDouble(Rocking::turn).max().orElseThrow();
    double near = Math.max(bandNm / 2, 3 * noise(heights));
    return average(turns.stream().filter(p -> turn(p) >= highest - near).toList());
  }

  /** Signed so that the extreme is the highest; without the landing, while the plunger rings. */
  private double[] landed() {
    int n = values.size();
    long deepest = Long.MIN_VALUE;
    for (int i = 0; i < n; i++) {
      deepest = Math.max(deepest, pushedIn.get(i));
    }
    int landing = 0;
    while (landing < n - 1 && pushedIn.get(landing) < LANDED_SHARE * deepest) {
      landing++;
    }
    int from = landing;
    while (from < n - 1 && times.get(from) - times.get(landing) < LANDING_NANOS) {
      from++;
    }
    double[] heights = new double[n - from];
    for (int i = 0; i < heights.length; i++) {
      heights[i] = (double) (sign * values.get(from + i));
    }
    return heights;
  }

  private List<Parabola> turns(double[] heights) {
    double top = top(heights);
    double rocked = top - lowestBetween(heights, top - Math.max(bandNm, 2 * medianStep(heights)));
    double cap = cap(heights, rocked);
    List<Parabola> found = new ArrayList<>();
    int from = -1;
    int last = -1;
    for (int i = 0; i <= heights.length; i++) {
      if (i < heights.length && heights[i] > top - cap) {
        from = from < 0 ? i : from;
        last = i;
      } else if (from >= 0 && (i == heights.length || heights[i] < top - 2 * cap)) {
        keep(heights, from, last, top - rocked - cap, found);
        from = -1;
      }
    }
    return withoutEdges(found);
  }

  /** The last turn may be the start of leaving, the first the end of landing. */
  private static List<Parabola> withoutEdges(List<Parabola> turns) {
    return turns.size() < 4 ? turns : turns.subList(1, turns.size() - 1);
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

  /**
   * How far below the top still belongs to a turning point: a tenth of the rocking, or what noise
   * asks for; all of a contact in which nobody rocked.
   */
  private double cap(double[] heights, double rocked) {
    double noise = noise(heights);
    double still = Math.max(bandNm, 6 * noise);
    return rocked <= still
        ? still
        : Math.max(CAP_SHARE * rocked, Math.min(3 * noise, 0.35 * rocked));
  }

  private static double medianStep(double[] heights) {
    double[] steps = new double[heights.length - 1];
    for (int i = 0; i < steps.length; i++) {
      steps[i] = Math.abs(heights[i + 1] - heights[i]);
    }
    return median(steps);
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return values[values.length / 2];
  }

  /**
   * Standard deviation by the median of second differences, which a smooth way leaves be; half the
   * band at most.
   */
  private double noise(double[] heights) {
    double[] bends = new double[heights.length - 2];
    for (int i = 0; i < bends.length; i++) {
      bends[i] = Math.abs(heights[i] - 2 * heights[i + 1] + heights[i + 2]);
    }
    return Math.min(median(bends) / (NORMAL_MEDIAN * Math.sqrt(6)), bandNm / 2);
  }

  /** One or two samples take their neighbours in, unless these are on the way down or up. */
  private void keep(double[] heights, int from, int to, double floor, List<Parabola> found) {
    boolean narrow = to - from < 2;
    int first = narrow && from > 0 && heights[from - 1] >= floor ? from - 1 : from;
    int last = narrow && to < heights.length - 1 && heights[to + 1] >= floor ? to + 1 : to;
    if (last - first < 2) {
      return;
    }
    Parabola parabola = Parabola.over(Arrays.copyOfRange(heights, first, last + 1));
    if (parabola.peaks() || parabola.range() <= bandNm) {
      found.add(parabola);
    }
  }

  private static double turn(Parabola parabola) {
    return parabola.peaks() ? parabola.peak() : parabola.mean();
  }

  private Extremum average(List<Parabola> turns) {
    double weighted = 0;
    double squares = 0;
    int samples = 0;
    for (Parabola parabola : turns) {
      weighted += parabola.count() * turn(parabola);
      squares += parabola.sumOfSquaredResiduals();
      samples += parabola.count();
    }
    int freedom = Math.max(1, samples - 3 * turns.size());
    return new Extremum(
        sign * Math.round(weighted / samples), Math.round(Math.sqrt(squares / freedom)), samples);
  }
}
