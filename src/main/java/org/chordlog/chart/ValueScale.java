package org.chordlog.chart;

import java.util.ArrayList;
import java.util.List;
import org.chordlog.stats.ChartPoint;
import org.chordlog.stats.ChartSnapshot;
import org.chordlog.stats.LimitSpan;
import org.jspecify.annotations.Nullable;

/** The value axis: just what is to be seen, never stretched to zero, never without height. */
record ValueScale(double low, double high) {
  private static final double MARGIN = 0.08;
  private static final double MOST_STRETCH = 3;

  /** Specification limits widen the scale unless they would flatten the points. */
  static ValueScale of(ChartSnapshot chart) {
    List<Double> values = new ArrayList<>(chart.points().stream().map(ChartPoint::value).toList());
    for (LimitSpan span : chart.limits()) {
      add(values, span.centre());
      add(values, span.lower());
      add(values, span.upper());
    }
    ValueScale tight = of(values);
    add(values, chart.lowerSpecificationLimit());
    add(values, chart.upperSpecificationLimit());
    ValueScale wide = of(values);
    return wide.height() <= MOST_STRETCH * tight.height() ? wide : tight;
  }

  static ValueScale of(List<Double> values) {
    if (values.isEmpty()) {
      return new ValueScale(0, 1);
    }
    double low = values.stream().mapToDouble(v -> v).min().orElseThrow();
    double high = values.stream().mapToDouble(v -> v).max().orElseThrow();
    double least = Math.max(1e-9, 1e-5 * Math.max(Math.abs(low), Math.abs(high)));
    double margin = Math.max(MARGIN * (high - low), least);
    return new ValueScale(low - margin, high + margin);
  }

  double height() {
    return high - low;
  }

  boolean shows(double value) {
    return value >= low && value <= high;
  }

  /** Decimals that tell a hundredth of the height apart. */
  int decimals() {
    return (int) Math.max(0, Math.min(9, Math.ceil(1.7 - Math.log10(height()))));
  }

  private static void add(List<Double> values, @Nullable Double value) {
    if (value != null) {
      values.add(value);
    }
  }
}
