package org.chordlog.chart;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.chordlog.stats.control.ChartPoint;
import org.chordlog.stats.control.ChartSnapshot;
import org.chordlog.stats.control.LimitSpan;
import org.jspecify.annotations.Nullable;

/** The value axis: just what is to be seen, never stretched to zero, never without height. */
record ValueScale(double low, double high) {
  private static final double MARGIN = 0.08;
  private static final double FLAT = 1e-9;
  private static final double FLAT_MARGIN = 1e-3;
  private static final double MOST_STRETCH = 3;

  /** Specification limits widen the scale unless they would flatten the points. */
  static ValueScale of(ChartSnapshot chart) {
    return of(chart, List.of());
  }

  /** The same, also showing these ends of a distribution, unless they would flatten the points. */
  static ValueScale of(ChartSnapshot chart, List<Double> ends) {
    List<Double> values = values(chart);
    List<Double> withEnds = new ArrayList<>(values);
    withEnds.addAll(ends);
    boolean wide = of(withEnds).height() > MOST_STRETCH * of(values).height();
    return of(
        wide && !values.isEmpty() ? values : withEnds,
        present(chart.lowerSpecificationLimit(), chart.upperSpecificationLimit()));
  }

  /** Of the points that count, and of the control limits; of all points where none counts. */
  private static List<Double> values(ChartSnapshot chart) {
    boolean none = chart.points().stream().allMatch(ChartPoint::excluded);
    List<Double> values = new ArrayList<>();
    for (ChartPoint point : chart.points()) {
      if (none || !point.excluded()) {
        values.add(point.value());
        add(values, point.lowerValue());
      }
    }
    for (LimitSpan span : chart.limits()) {
      add(values, span.centre());
      add(values, span.lower());
      add(values, span.upper());
    }
    return values;
  }

  /** Also shows the limits, unless they would flatten values that are not flat anyway. */
  static ValueScale of(List<Double> values, List<Double> limits) {
    return of(values, limits, 0);
  }

  /** The same, at least that high. */
  static ValueScale of(List<Double> values, List<Double> limits, double leastHeight) {
    ValueScale tight = of(values).atLeast(leastHeight);
    List<Double> all = new ArrayList<>(values);
    all.addAll(limits);
    ValueScale wide = of(all);
    return values.isEmpty() || flat(values) || wide.height() <= MOST_STRETCH * tight.height()
        ? wide
        : tight;
  }

  static ValueScale of(List<Double> values) {
    if (values.isEmpty()) {
      return new ValueScale(0, 1);
    }
    double low = Collections.min(values);
    double high = Collections.max(values);
    double size = Math.max(Math.abs(low), Math.abs(high));
    double margin = flat(values) ? (size == 0 ? 1 : FLAT_MARGIN * size) : MARGIN * (high - low);
    return new ValueScale(low - margin, high + margin);
  }

  private static boolean flat(List<Double> values) {
    double low = Collections.min(values);
    double high = Collections.max(values);
    return high - low <= FLAT * Math.max(Math.abs(low), Math.abs(high));
  }

  private ValueScale atLeast(double leastHeight) {
    double missing = Math.max(0, leastHeight - height()) / 2;
    return new ValueScale(low - missing, high + missing);
  }

  double height() {
    return high - low;
  }

  boolean shows(double value) {
    return value >= low && value <= high;
  }

  /** The value, or the end beyond which it is. */
  double inside(double value) {
    return Math.max(low, Math.min(high, value));
  }

  /** Decimals that round off at most a hundredth of the height: the rule for all labels. */
  int decimals() {
    return (int) Math.max(0, Math.min(9, Math.ceil(1.7 - Math.log10(height()))));
  }

  /** The same, but for a value beyond the scale no more than three digits or hundredths. */
  int decimals(double value) {
    double size = Math.max(Math.abs(value), 1e-9);
    int few = 2 - (int) Math.min(0, Math.floor(Math.log10(size)));
    return shows(value) ? decimals() : Math.min(decimals(), few);
  }

  static List<Double> present(@Nullable Double... values) {
    List<Double> present = new ArrayList<>();
    for (Double value : values) {
      add(present, value);
    }
    return present;
  }

  static void add(List<Double> values, @Nullable Double value) {
    if (value != null) {
      values.add(value);
    }
  }
}
